/** Reports: what was found, how sure it is, whether it got better and what comes next, as data that any page can be made of. */

export { medianOf } from "./answer.ts";
export { makeReport } from "./make-report.ts";
export * from "./result.ts";
export { type ReportWords, reportWords } from "./words.ts";
