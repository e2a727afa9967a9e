/** The linter: rules over cases and visits, and the count of what was examined. */
export type { AcceptedFinding } from "./accepted.ts";
export {
  againstBaseline,
  type Baseline,
  type FileKey,
  formatBaseline,
  makeBaseline,
  parseBaseline,
  samePaths,
} from "./baseline.ts";
export type { Completeness, OrganCounts } from "./completeness.ts";
export type { Finding } from "./finding.ts";
export { lintCases } from "./lint.ts";
export {
  type LintedParts,
  Linter,
  type LintOptions,
  type LintResult,
  lintResult,
} from "./linter.ts";
export { gradeCheckFor } from "./needs-scales.ts";
export { type CheckedParcel, checkedParcels, type ParcelCheck } from "./packing.ts";
export { type Example, type Level, levels, type Rule } from "./rule.ts";
export { checkRulesOf, ruleNamed, UnknownRule } from "./rule-names.ts";
export { type RuleTexts, textsOf } from "./rule-texts.ts";
export { rules } from "./rules/index.ts";
export { unaskedEntries } from "./unasked-entries.ts";
