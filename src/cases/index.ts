/** Case files: found, read, checked and typed. This room knows the format and the anatomy, but no rules. */
export { isUnborn, isWeaned } from "./age-class.ts";
export type { DueQuestion } from "./due.ts";
export { organsDue } from "./due.ts";
export type { Fault } from "./fault.ts";
export { leaveOutFaultyScales } from "./leave-out-scales.ts";
export { isNoDecision, saysNothing } from "./meant/word.ts";
export type { Archive, Case, Farm, HouseScale, Visit } from "./model.ts";
export { isAfter, type Moment, moment, onOneClock } from "./moment.ts";
export type { Finding, OrganState, OrganStatus } from "./organ-state.ts";
export { formatPath, type Path, pathOf, pathsMeet, valueAt } from "./path.ts";
export type { ResolvedProtocol } from "./protocol.ts";
export { quantity } from "./quantity.ts";
export { type ReadOptions, readCases } from "./read-cases.ts";
export { type ReadSettings, readSettings } from "./read-settings.ts";
export type { Settings } from "./settings.ts";
export { allShipped, unknownName } from "./settings-faults.ts";
export { writtenPath } from "./written-path.ts";
