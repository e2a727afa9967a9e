/** Case files: found, read, checked and typed. This room knows the format and the anatomy, but no rules. */

export type { AuthorityEntry } from "../generated/case.types.ts";
export { type Fault, notShown, placedFault } from "./faults/fault.ts";
export { saysNothing } from "./faults/intended-word.ts";
export {
  ArchiveReader,
  allFaults,
  byFile,
  type ReadEnd,
  type ReadOptions,
  readCases,
  type Shard,
  type ToldBesides,
} from "./files/read-cases.ts";
export { type Noted, witnessed } from "./files/witness.ts";
export { classOfAge, isUnborn, isWeaned } from "./model/age-class.ts";
export { standsIn } from "./model/defaults.ts";
export { organsDue } from "./model/due.ts";
export type { Archive, Case, Farm, HouseScale, Results, Visit, VisitContext } from "./model/model.ts";
export { isAfter, type Moment, moment, onOneClock } from "./model/moment.ts";
export { type Finding, listed, type OrganState } from "./model/organ-state.ts";
export { formatPath, type Path, pathOf, pathsMeet, valueAt } from "./model/path.ts";
export type { ResolvedProtocol } from "./model/protocol.ts";
export { quantity } from "./model/quantity.ts";
export { questionOf, questionText, type VisitQuestion } from "./model/question.ts";
export { writtenPath } from "./model/written-path.ts";
export { leaveOutFaultyScales } from "./settings/leave-out-scales.ts";
export { type ReadSettings, readSettings } from "./settings/read-settings.ts";
export { type SettingOrigins, settingOrigins } from "./settings/setting-origins.ts";
export type { Settings } from "./settings/settings.ts";
export { allShipped, unknownName } from "./settings/settings-faults.ts";
