/**
 * The library: the same functions that the commands call.
 *
 *     import { readCases, lintCases, scoreCases, herdEstimates } from "carcase";
 *     const archive = readCases(["alder-farm"]);
 *     const { findings } = lintCases(archive);
 */
export {
  type AgreeReport,
  agree,
  caseReadings,
  type PairAgreement,
  type Reading,
  ReadingError,
  type ScaleAgreement,
  tableReadings,
} from "./agree/index.ts";
export { type Alarm, findAlarms, openAlarms } from "./alarms/index.ts";
export {
  type Archive,
  type Case,
  type Fault,
  type ReadOptions,
  readCases,
  type Settings,
  type Visit,
} from "./cases/index.ts";
export {
  type Compared,
  type CompareOptions,
  type CompareReport,
  type Comparison,
  compareCases,
  compareFarms,
  type FarmsOptions,
  type FarmsReport,
} from "./compare/index.ts";
export { type Explanation, explain } from "./explain/index.ts";
export { type FixedText, type FixTextOptions, fixText } from "./fix/index.ts";
export {
  type ClusterKind,
  type CombinedEstimate,
  checkHouseScales,
  type Dimension,
  type Estimate,
  type GroupDimension,
  type GroupOptions,
  groupScores,
  type HerdAnswer,
  type HerdOptions,
  type HerdReport,
  type HerdScores,
  herdEstimates,
  predictedIndex,
  type Stratum,
  type TestAccuracy,
} from "./herd/index.ts";
export type { Scale } from "./knowledge/index.ts";
export { scales } from "./knowledge/scales.ts";
export { type GradeFault, gradeFaults } from "./lint/grade-faults.ts";
export {
  type AcceptedFinding,
  type Completeness,
  type Finding,
  type LintOptions,
  type LintResult,
  lintCases,
  UnknownRule,
} from "./lint/index.ts";
export {
  type Measured,
  type Measurement,
  type Measurements,
  measureAll,
  measureTracing,
  type Problem,
} from "./measure/index.ts";
export {
  type ChooseQuestion,
  type CompareQuestion,
  type DetectQuestion,
  type EstimateQuestion,
  farmFrame,
  type Plan,
  planChoose,
  planCompare,
  planDetect,
  planDiagnostic,
  planEstimate,
  planSay,
  type SayQuestion,
  tagsFrame,
  type Unit,
} from "./plan/index.ts";
export { type SnoutReading, type SnoutStatement, snoutReading } from "./reading/index.ts";
export type { Sample } from "./record/index.ts";
export { sampleWorth, type TestWorth, type Worth } from "./sampling/index.ts";
export { type CaseScore, type ScoredCase, type ScoreOptions, scoreCases } from "./score/index.ts";
