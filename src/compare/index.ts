/** Did it change, or does it differ? Two visits or groups or more, compared where they can be and refused where not. */
export { type CompareOptions, compareCases } from "./compare.ts";
export type {
  Between,
  Caveat,
  Compared,
  CompareReport,
  Comparison,
  Factor,
  Limited,
  Reason,
  Result,
  SharesCompared,
  SideLabel,
  SideNumbers,
  Stratified,
} from "./comparison.ts";
export { type Facet, facetNames, type Where } from "./facets.ts";
export { couldShowText, differenceText, ofExamined, plain, pText, shiftText, testText } from "./words.ts";
