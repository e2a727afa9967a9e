/** The work-up: which diseases a record fits, and on what that rests. */
export { type Fit, fitOf, hasCore, isExcluded, type Met } from "./fit.ts";
export { type Workup, workUp } from "./workup.ts";
