/** The small language in which alarms, diseases and criteria say what must be recorded, held against cases and visits. */
export type { Evidence, Subject } from "./evidence.ts";
export { looksOf } from "./looks.ts";
export { matchCondition } from "./match-condition.ts";
export { finding as recordedFinding } from "./match-finding.ts";
