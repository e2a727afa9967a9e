/** The small language in which alarms, diseases and criteria say what must be recorded, held against cases and visits. */
export { asksHerd, organsAsked, wantsLesion } from "./asks.ts";
export type { Evidence, Subject } from "./evidence.ts";
export { looksOf } from "./looks.ts";
export { matchCondition } from "./match-condition.ts";
export { finding as recordedFinding, findingEvidence } from "./match-finding.ts";
