/** Rules of the family visit, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { caseDayOffVisit } from "./case-day-off-visit.ts";
import { caseListMissing } from "./case-list-missing.ts";
import { caseNotInVisit } from "./case-not-in-visit.ts";
import { duplicateCase } from "./duplicate-case.ts";
import { duplicateTag } from "./duplicate-tag.ts";
import { fewPigsForSyndrome } from "./few-pigs-for-syndrome.ts";
import { noAcuteUntreatedPig } from "./no-acute-untreated-pig.ts";
import { noHealthyComparison } from "./no-healthy-comparison.ts";
import { oneOriginRules } from "./one-origin.ts";
import { openedBeforeVisit } from "./opened-before-visit.ts";
import { organNeverExamined } from "./organ-never-examined.ts";
import { smallRandomSample } from "./small-random-sample.ts";
import { twoReaders } from "./two-readers.ts";
import { visitCaseAbsent } from "./visit-case-absent.ts";
import { yearOffVisit } from "./year-off-visit.ts";

export const visitRules: readonly Rule[] = [
  duplicateCase,
  duplicateTag,
  visitCaseAbsent,
  caseNotInVisit,
  fewPigsForSyndrome,
  smallRandomSample,
  ...oneOriginRules,
  noAcuteUntreatedPig,
  noHealthyComparison,
  twoReaders,
  organNeverExamined,
  yearOffVisit,
  openedBeforeVisit,
  caseDayOffVisit,
  caseListMissing,
];
