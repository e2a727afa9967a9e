/** Figures as SVG: what was found, in pictures that need no browser to be made, no colour to be read and no eyes to be understood. */
export { type BodyMap, bodyMap } from "./body-map.ts";
export { type Drawing, figure, type Naming } from "./canvas.ts";
export { type CaseTimes, caseTimes } from "./case-times.ts";
export { type Completeness, completeness, type Looked } from "./completeness.ts";
export { type Distribution, distribution } from "./distribution.ts";
export { type Forest, type ForestRow, forest } from "./forest.ts";
export { type LungMap, lungMap, type PleurisyPlace } from "./lung-map.ts";
export { type Snout, type SnoutSections, snoutSections } from "./snout-sections.ts";
export { type Timetable, timetable } from "./timetable.ts";
export { type VisitToVisit, visitToVisit } from "./visit-to-visit.ts";
