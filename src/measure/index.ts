/** Tracings: areas, perimeters and ratios from a drawn snout section or lung. */
export { caseTracings } from "./case-tracings.ts";
export { type Measured, type Measurement, measureTracing } from "./measure.ts";
export {
  type Measurements,
  measureAll,
} from "./measure-all.ts";
export { type Problem, problemKinds } from "./problem.ts";
export { type MeasuredRecord, measuredRecord } from "./record.ts";
export type { Sided, Value } from "./values.ts";
