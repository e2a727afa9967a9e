/** The work-up: which diseases a record fits, and on what that rests. */
export { type CheckedCriterion, criteriaOf } from "./criteria.ts";
export { type Fit, fitOf, hasCore, isExcluded, type Met } from "./fit.ts";
export { type Counts, countOf, countsOf, orderRule } from "./order.ts";
export {
  type Likeness,
  likenessOf,
  outbreaksOf,
  pictureOf,
  type Told,
  tallied,
} from "./outbreaks.ts";
export { type SampleInHand, type Settling, settling } from "./samples.ts";
export { type Unexplained, unexplained } from "./unexplained.ts";
export { toldApart, type Workup, workUp } from "./workup.ts";
