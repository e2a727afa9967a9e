/** Did it change, or does it differ? Two visits or groups or more, compared where they can be and refused where not. */
export { type CompareOptions, compareCases } from "./compare.ts";
export type {
  Between,
  Caveat,
  Cluster,
  Compared,
  CompareReport,
  Comparison,
  Factor,
  Reason,
  SideLabel,
  SideNumbers,
} from "./comparison.ts";
export { type Facet, facetNames, type Where } from "./facets.ts";
export { clusterNames } from "./pens.ts";
export type { ClaimOn, Limited, Ratio, Result, SharesCompared, Stratified } from "./tests-made.ts";
export { byText, pennedText, testText, withinText } from "./tests-said.ts";
export { couldShowText, differenceText, ofExamined, plain, pText, ratioText, shiftText } from "./words.ts";
