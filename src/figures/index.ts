/** Figures as SVG: what was found, in pictures that need no browser to be made, no colour to be read and no eyes to be understood. */
export { bodyMap } from "./body-map.ts";
export { type Drawing, figure } from "./canvas.ts";
export { caseTimes } from "./case-times.ts";
export { completeness, type Looked } from "./completeness.ts";
export { distribution } from "./distribution.ts";
export { type ForestRow, forest } from "./forest.ts";
export { lungMap, type PleurisyPlace } from "./lung-map.ts";
export { type Snout, snoutSections } from "./snout-sections.ts";
export { timetable } from "./timetable.ts";
export { visitToVisit } from "./visit-to-visit.ts";
