/** Who stands behind the planned numbers. */
import type { Source } from "../knowledge/index.ts";
import type { SharesRule } from "../statistics/index.ts";

export const exactDraw: Source = {
  cite: "Exact hypergeometric probability (drawing without replacement), searched for the smallest number",
  confidence: "derived",
};
export const cannonRoeSource: Source = {
  cite: "Cannon & Roe 1982, Livestock disease surveys, Canberra: the formula",
  confidence: "verified",
  second_hand: true,
  note: "The book was not opened; the exact number counts.",
};
export const unlimitedDraw: Source = {
  cite: "Binomial probability: ln(1 - confidence) / ln(1 - prevalence x sensitivity)",
  confidence: "derived",
};
export const herdTestSource: Source = {
  cite: "Cameron & Baldock 1998, Prev Vet Med 34:1-17: herd sensitivity and specificity",
  confidence: "verified",
  second_hand: true,
  note: "The formula and its examples stand in manuals of programs; the paper was not opened.",
};
export const poolSource: Source = {
  cite: "Exact probability that no working pool holds an affected pig; Christensen & Gardner 2000, Prev Vet Med 45:83-106",
  confidence: "from-memory",
};
export const exactInterval: Source = {
  cite: "Clopper & Pearson 1934, Biometrika 26:404-413: the exact interval, searched for the number",
  confidence: "derived",
};
export const finiteExactInterval: Source = {
  cite: "Exact interval from hypergeometric tails, searched for the number",
  confidence: "derived",
};
export const normalFormula: Source = {
  cite: "Normal formula z² p (1 - p) / d², with finite population correction",
  confidence: "common-practice",
};
export const designEffectSource: Source = {
  cite: "Design effect 1 + (m - 1) x correlation: Kish 1965, Survey sampling",
  confidence: "from-memory",
};
/** The tests of two shares, as settings may choose them. */
export const sharesTests: Readonly<Record<SharesRule, { readonly name: string; readonly source: Source }>> = {
  fisher: {
    name: "Fisher's exact test",
    source: {
      cite: "Fisher 1935, exact test, two-sided; power by adding up all tables",
      confidence: "derived",
    },
  },
  "mid-p": {
    name: "Fisher's test with mid-p",
    source: {
      cite: "Lancaster 1961: mid-p of Fisher's test; not exact, it promises no level",
      confidence: "from-memory",
    },
  },
  boschloo: {
    name: "Boschloo's exact test",
    source: {
      cite: "Boschloo 1970, Statistica Neerlandica 24:1-9: exact test, two-sided by doubling; power by adding up all tables",
      confidence: "from-memory",
    },
  },
};
export const byPensSource: Source = {
  cite: "Rao & Scott 1992, Biometrics 48:577-585: counts over the design effect; tested by t, as compare does",
  confidence: "from-memory",
};
export const strataSource: Source = {
  cite: "Gart 1970, Biometrika 57:471-475; Mehta, Patel & Gray 1985: exact test over strata",
  confidence: "from-memory",
};
export const ranksSource: Source = {
  cite: "Mann & Whitney 1947, Ann Math Stat 18:50-60: rank-sum test, exact up to 100 values of both visits together",
  confidence: "from-memory",
};
export const rankFormulaSource: Source = {
  cite: "Normal formula for ranks, also of yes and no: Noether 1987, J Am Stat Assoc 82:645-647; with ties Zhao, Rahardja & Qu 2008, Stat Med 27:462-468",
  confidence: "from-memory",
};
export const simulationSource: Source = {
  cite: "Simulation; pigs of one pen alike by the urn of Eggenberger & Polya 1923, of yes and no the beta-binomial distribution; generator of Blackman & Vigna 2021",
  confidence: "from-memory",
};
export const generatorSource: Source = {
  cite: "Blackman & Vigna 2021, ACM Trans Math Softw 47:36: the generator xoshiro128**; partial shuffle of Fisher and Yates",
  confidence: "from-memory",
};
