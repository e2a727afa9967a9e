/** What each test answers, as it is exported. */

import type { SharesRule } from "../../statistics/index.ts";
import type { Trial } from "../sides/arms.ts";

/** A value with its limits; a limit is null where there is none (or it is infinite). */
export interface Limited {
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** A ratio: `unbounded` when it has no upper limit because nothing stands below the line; its value is then null. */
export interface Ratio extends Limited {
  readonly unbounded: boolean;
}

const finite = (value: number | null): number | null =>
  value !== null && Number.isFinite(value) ? value : null;

export const limited = (value: number | null, lower: number | null, upper: number | null): Limited => ({
  value: finite(value),
  lower: finite(lower),
  upper: finite(upper),
});

export const ratio = (value: number | null, lower: number | null, upper: number | null): Ratio => ({
  ...limited(value, lower, upper),
  unbounded: value === Number.POSITIVE_INFINITY,
});

/** Two sides of an indicator. Every value is the second side against the first; shares are from 0 to 1. */
export interface SharesCompared {
  readonly test: "fisher-exact";
  /** Which p `p` is: that of the settings, Fisher's where sides are too large for Boschloo's. */
  readonly rule: SharesRule;
  readonly p: number;
  /** Fisher's, whatever the rule. */
  readonly p_fisher: number;
  /** Second share less first: Zou & Donner 2008, widened by Agresti & Caffo 2000. */
  readonly difference: Limited & { readonly method: "zou-donner" };
  /** Donner & Zou 2012. */
  readonly risk_ratio: Ratio;
  /** Conditional maximum likelihood estimate with its exact limits. */
  readonly odds_ratio: Ratio;
  /** Within strata, when the sides are made up differently and have a stratum in common; else null. */
  readonly stratified: SharesWithinStrata | null;
  /** Where pigs share pens; else null. */
  readonly penned: SharesByPens | null;
  /** The nearest shares of the second side that would be shown with 80 % power; null beyond 1000 pigs a side and where a claim does not rest on all pigs. */
  readonly could_show: { readonly below: number | null; readonly above: number | null } | null;
}

/** What was found within strata, and over what. */
interface FoundWithinStrata {
  readonly by: readonly string[];
  /** Strata with pigs of two sides or more. */
  readonly strata: number;
  /** Pigs in strata that only one side has; they add nothing here. */
  readonly pigs_outside: number;
  /** Whether it points the other way than all pigs together do. */
  readonly opposite: boolean;
  readonly p: number;
  /** Whether all ways were counted; else p is from the normal distribution. */
  readonly exact: boolean;
}

/** Fisher's test over strata; Mantel & Haenszel 1959 (with the correction of one half) where it is not exact. */
export interface SharesWithinStrata extends FoundWithinStrata {
  readonly odds_ratio: Ratio;
  /** Whether p and limits count the table itself half. */
  readonly mid_p: boolean;
  /** Breslow & Day with Tarone's correction: a small one says that the strata differ; null when it cannot be told. */
  readonly p_homogeneity: number | null;
}

/** Scores within strata: van Elteren 1960. */
export interface ScoresWithinStrata extends FoundWithinStrata {
  /** How often a pig of the second side scores above one of the first in its stratum, ties half; 0 to 1. */
  readonly superiority: number;
}

/** A trend within strata. */
export interface TrendWithinStrata extends FoundWithinStrata {
  /** Above 0 when it became more common, or higher. */
  readonly z: number | null;
}

export type WithinStrata = SharesWithinStrata | ScoresWithinStrata | TrendWithinStrata;

/** Sides whose pigs share pens (rooms, litters), or pigs whose pen is not recorded, each for itself. */
interface FoundByPens {
  /** Pens of several pigs or one, and pigs whose pen is not recorded, of each side. */
  readonly clusters: readonly number[];
  /** Of these, pigs whose pen is not recorded. */
  readonly alone: readonly number[];
  /** Whether p is of the test within strata as well. */
  readonly within: boolean;
  readonly p: number;
}

/** Rao & Scott 1992: counts over the design effect. */
export interface SharesByPens extends FoundByPens {
  readonly design_effect: readonly [number, number];
  /** As many pigs drawn singly say as much. */
  readonly effective: readonly [number, number];
  /** Second share less first, limits on the effective numbers. */
  readonly difference: Limited & { readonly method: "newcombe" };
}

/** The means of the pens, ranked. */
export interface ScoresByPens extends FoundByPens {
  readonly superiority: number;
  readonly exact: boolean;
}

/** The means of the pens (shares affected, or mean scores), dealt out anew to the visits or arms. */
export interface MeansByPens extends FoundByPens {
  /** Above 0 when they rise; null where none varies. */
  readonly z: number | null;
  /** Whether all ways to deal the pens out were counted; else 9,999 at random. */
  readonly exact: boolean;
  /** How far the last lies from the first, each pen alike, within strata: of three visits or more along a straight line. */
  readonly difference: Limited & { readonly method: "t" | "newcombe" };
}

/** Treated against control: the means of what was allocated, pens or groups. */
export interface ArmsCompared extends MeansByPens {
  readonly test: "unit-means";
  readonly unit: Trial["unit"];
}

/** Two sides of a scale. */
export interface ScoresCompared {
  readonly test: "mann-whitney";
  readonly exact: boolean;
  readonly p: number;
  /** How often a pig of the second side scores above one of the first, ties half; 0 to 1. */
  readonly superiority: number;
  /** Second less first, in points or the unit of the scale; null beyond 4 000 000 pairs. */
  readonly shift:
    | (Limited & {
        readonly method: "hodges-lehmann";
        /** Why there are no limits: `too few values`, or `ties` when both would be one number; null with limits. */
        readonly reason: string | null;
      })
    | null;
  readonly stratified: ScoresWithinStrata | null;
  readonly penned: ScoresByPens | null;
}

/** Three visits or more. */
interface OverVisits {
  readonly p: number;
  /** Above 0 when it became more common, or higher; null when all pigs are alike. */
  readonly z: number | null;
  /** Place of each side on the time axis: days since the first visit, or its number where a date is missing. */
  readonly places: readonly number[];
  readonly unit: "days" | "order";
  readonly stratified: TrendWithinStrata | null;
  /** Where pigs share pens; else null. */
  readonly penned: MeansByPens | null;
}

/** Three visits or more, an indicator. */
export interface TrendCompared extends OverVisits {
  readonly test: "cochran-armitage";
  /** Whether all ways to share the affected out were counted; else p is normal, for large numbers. */
  readonly exact: boolean;
  /** Last visit less first, all pigs together; by pens where pigs share them. */
  readonly first_to_last: Limited & { readonly method: "zou-donner" | "newcombe" };
}

/** Three visits or more, a scale: midranks over days. */
export interface RankTrendCompared extends OverVisits {
  readonly test: "cuzick";
  /** Whether all ways to share the scores out were counted; else p is of 9,999 at random. */
  readonly exact: boolean;
  /** Last visit less first, all pigs together; null where pigs share pens, of which `penned` speaks. */
  readonly first_to_last: ScoresCompared["shift"];
}

/** Three groups or more, an indicator: Fisher's test after Freeman & Halton, or Pearson's chi-squared when not exact. */
export interface ManySharesCompared {
  readonly test: "freeman-halton";
  readonly exact: boolean;
  readonly p: number;
  readonly chi_squared: number | null;
  readonly df: number;
  /** Smallest expected count; the chi-squared form is rough below 5. */
  readonly least_expected: number;
}

/** Three groups or more, a scale. */
export interface RanksCompared {
  readonly test: "kruskal-wallis";
  readonly exact: boolean;
  readonly p: number;
  readonly h: number | null;
  readonly df: number;
}

export type Result =
  | ArmsCompared
  | SharesCompared
  | ScoresCompared
  | TrendCompared
  | RankTrendCompared
  | ManySharesCompared
  | RanksCompared;

/** What was found within strata; null where that was not asked or cannot be. */
export const withinStrata = (result: Result): WithinStrata | null =>
  "stratified" in result ? result.stratified : null;

/** What was found by pens; null where that was not asked or cannot be. */
export const byPens = (result: Result): SharesByPens | ScoresByPens | MeansByPens | null =>
  result.test === "unit-means" ? result : "penned" in result ? result.penned : null;

/**
 * What is claimed rests on: all pigs, each for itself; like against like within strata, when the sides are made up
 * differently; pens, where pigs share them; both; or nothing can be claimed, and why stands in `no_claim`.
 */
export type ClaimOn = "pigs" | "strata" | "pens" | "pens-in-strata" | "none";
