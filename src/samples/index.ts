/** Samples from the knife to the parcel: what to take, what to bring for it, what was taken and how long it is good. */
export {
  ageClassNamed,
  ageNames,
  ComplaintFault,
  pigsOfComplaint,
  signsNamed,
} from "./ask.ts";
export {
  type ContainerLeft,
  checkSamples,
  type MissingSample,
  type Reckoned,
  type SampleCheck,
  type TestLeft,
} from "./check.ts";
export { type PigAsked, type SampleDue, samplesDue, samplesOfCase, setsOf } from "./due.ts";
export {
  type PigGroup,
  pieceThickness,
  plannedCases,
  type SamplePlan,
  samplePlan,
} from "./plan.ts";
