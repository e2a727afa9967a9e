/** Why a test and an interval that stand beside each other say different things, in plain words. */
import { clusterWord } from "../comparison.ts";
import type { Limited } from "../judgement/results.ts";
import { allowedFor, type Setting, type Tested } from "./comparison-sentence.ts";

const hint = "a hint to look again with more pigs, not a finding";

/** A line about a comparison; null where test and intervals agree. */
export function whyApart(one: Tested, setting: Setting): string | null {
  const { p, shown, claim_on } = one;
  if (p === null || setting.tooFew) return null;
  const small = p < 1 - setting.level;
  const left = leavesOut(one);
  const { test } = one.result;
  if (shown) return claimedBesideNone(one);
  if (small)
    return `small taken alone, but not among ${allowedFor(setting.adjustment)}: the more is asked, the more is found by chance; ${hint}`;
  if (!left) return null;
  const overVisits = test === "cochran-armitage" || test === "cuzick";
  if (overVisits && (claim_on === "pigs" || claim_on === "strata"))
    return `an interval above leaves out 'no difference': it is of the first and the last visit only, and all visits together show no trend; ${hint}`;
  if (one.result.test === "unit-means")
    return `the interval leaves out 'no difference' and the permutation does not show one: of so few ${one.result.unit}s it is the stricter rule; ${hint}`;
  switch (claim_on) {
    case "strata":
      return `an interval above leaves out 'no difference': it is of all pigs together, and like against like shows none; ${hint}`;
    case "pens":
    case "pens-in-strata":
      return `an interval above leaves out 'no difference': it takes every pig for itself, or is rough with so few ${clusterWord(setting.cluster)}s, and the test by ${clusterWord(setting.cluster)}s shows none; ${hint}`;
    default:
      return `an interval above leaves out 'no difference' and the test does not show one: with so few pigs the test is the stricter rule of the two; ${hint}`;
  }
}

/** The test shows it, and the interval of the same pigs holds no difference. */
function claimedBesideNone({ result, claim_on }: Tested): string | null {
  const own =
    result.test === "fisher-exact"
      ? claim_on === "pigs"
        ? result.difference
        : claim_on?.startsWith("pens") === true
          ? result.penned?.difference
          : undefined
      : result.test === "mann-whitney" && claim_on === "pigs"
        ? (result.shift ?? undefined)
        : result.test === "unit-means"
          ? result.difference
          : (result.test === "cochran-armitage" || result.test === "cuzick") &&
              claim_on?.startsWith("pens") === true
            ? result.penned?.difference
            : undefined;
  return own === undefined || own.lower === null || own.upper === null || without(own, 0)
    ? null
    : "the interval reaches 'no difference' and the test shows one: two rules, near the limit; the test was chosen beforehand and counts";
}

const without = ({ lower, upper }: Limited, none: number): boolean =>
  (lower ?? Number.NEGATIVE_INFINITY) > none || (upper ?? Number.POSITIVE_INFINITY) < none;

/** Whether an interval that is printed for the comparison leaves out no effect. */
function leavesOut({ result }: Tested): boolean {
  switch (result.test) {
    case "fisher-exact":
      return (
        without(result.difference, 0) ||
        without(result.odds_ratio, 1) ||
        without(result.risk_ratio, 1) ||
        (result.penned !== null && without(result.penned.difference, 0)) ||
        (result.stratified !== null && without(result.stratified.odds_ratio, 1))
      );
    case "mann-whitney":
      return result.shift !== null && without(result.shift, 0);
    case "unit-means":
      return without(result.difference, 0);
    case "cochran-armitage":
    case "cuzick":
      return (
        (result.first_to_last !== null && without(result.first_to_last, 0)) ||
        (result.penned !== null && without(result.penned.difference, 0))
      );
    default:
      return false;
  }
}
