/** The methods behind a comparison, each with who says so; only those that were used. */
import type { Comparison } from "../compare/index.ts";

const methods = {
  "fisher-exact": [
    "Fisher's exact test 1935, two-sided; odds ratio: conditional maximum likelihood, exact limits (Cornfield 1956*).",
    "Difference: Newcombe 1998, Stat Med 17:873-890, method 10. Risk ratio: Koopman 1984, Biometrics 40:513-517.",
  ],
  "mann-whitney": [
    "Mann & Whitney 1947*, exact up to 100 pigs; shift: Hodges & Lehmann 1963*, interval Moses 1965*.",
  ],
  "cochran-armitage": ["Trend: Cochran 1954*; Armitage 1955, Biometrics 11:375-386."],
  "kruskal-wallis": [
    "Kruskal & Wallis 1952*, exact where a side has fewer than five pigs and it can be counted.",
  ],
} as const;

/** @param several whether p values were adjusted for several comparisons */
export function compareMethods(made: readonly Comparison[], several: boolean): string[] {
  const tests = new Set(made.flatMap(({ result }) => (result === null ? [] : [result.test])));
  const within = made.some(({ result }) => result?.test === "fisher-exact" && result.stratified !== null);
  return [
    ...[...tests].flatMap((test) => methods[test]),
    ...(within ? ["Strata: Mantel & Haenszel 1959*, with the correction of one half."] : []),
    ...(several ? ["Several comparisons: Holm 1979*, Scand J Stat 6:65-70."] : []),
  ];
}
