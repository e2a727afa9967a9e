/** Tracings: areas, perimeters and ratios from a drawn snout section or lung. */
export { type CaseTracing, caseTracings, type MeasurableOrgan } from "./case-tracings.ts";
export type { LungMeasures } from "./lungs.ts";
export { type Measured, type MeasuredOutline, type Measurement, measureTracing } from "./measure.ts";
export {
  type Measurements,
  measureAll,
  measureCaseTracing,
  type OwnedMeasurement,
  type OwnedProblem,
} from "./measure-all.ts";
export { type Problem, type ProblemKind, problemKinds } from "./problem.ts";
export { type MeasuredRecord, measuredRecord } from "./record.ts";
export type { SnoutMeasures } from "./snout.ts";
export type { Sided, Value } from "./values.ts";
