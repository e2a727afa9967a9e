/** What a comparison is answered with, as it is exported. Sides stand in order: visits by date, groups as in the farm file. */
import type { comparability } from "../knowledge/index.ts";
import type { Confidence } from "../score/index.ts";

export type Between = "visits" | "groups";

/** Something on which the sides must have something in common. */
export type Factor = keyof typeof comparability.factors;

/** Why there are no numbers; `examined`: one side has no pig in which it could be read, which nothing overrides. */
export interface Reason {
  readonly factor: Factor | "examined";
  /** What is on which side, and why that forbids a comparison. */
  readonly text: string;
}

/** What must be known to read the numbers. */
export interface Caveat {
  /** Set when the comparison would have been refused for it and was asked for nevertheless. */
  readonly although?: Factor;
  readonly text: string;
}

/** A value with its limits; a limit is null where there is none (or it is infinite). */
export interface Limited {
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** A visit or a group. */
export interface SideLabel {
  /** Id of the visit, or name of the group. */
  readonly side: string;
  /** As it stands in a sentence: `on 2026-03-14`, `in nursery-2`. */
  readonly title: string;
  /** Date of the visit; null for groups, and where it is not recorded. */
  readonly date: string | null;
  readonly pigs: number;
}

/** Pigs of one side that were read. */
export interface SideNumbers {
  readonly side: string;
  readonly title: string;
  /** Pigs read: the denominator. */
  readonly examined: number;
  readonly not_examined: number;
  /** Of indicators: pigs that answered yes, and their share of those examined, 0 to 1. */
  readonly affected?: number;
  readonly proportion?: number;
  /** Of scales, in points or the unit of the scale. */
  readonly mean?: number | null;
  readonly median?: number | null;
}

/** Two sides of an indicator. Every value is the second side against the first; shares are from 0 to 1. */
export interface SharesCompared {
  readonly test: "fisher-exact";
  readonly p: number;
  /** Second share less first: Newcombe 1998 and, beside it, Miettinen & Nurminen 1985. */
  readonly difference: Limited & { readonly method: "newcombe" };
  readonly difference_score: Limited & { readonly method: "miettinen-nurminen" };
  /** Koopman 1984. */
  readonly risk_ratio: Limited;
  /** Conditional maximum likelihood estimate with its exact limits. */
  readonly odds_ratio: Limited;
  /** Within strata, when the sides are made up differently; else null. */
  readonly stratified: Stratified | null;
  /** The nearest shares of the second side that would be shown with 80 % power; null beyond 1000 pigs a side. */
  readonly could_show: { readonly below: number | null; readonly above: number | null } | null;
}

/** Mantel & Haenszel over strata in which both sides have pigs. */
export interface Stratified {
  readonly by: readonly string[];
  /** Strata with pigs of both sides. */
  readonly strata: number;
  /** Pigs in strata that only one side has; they add nothing here. */
  readonly pigs_outside: number;
  readonly odds_ratio: Limited;
  /** Whether it points the other way than all pigs together do. */
  readonly opposite: boolean;
  /** With the correction of one half. */
  readonly p: number;
  /** Breslow & Day with Tarone's correction: a small one says that the strata differ; null when it cannot be told. */
  readonly p_homogeneity: number | null;
}

/** Two sides of a scale. */
export interface ScoresCompared {
  readonly test: "mann-whitney";
  readonly exact: boolean;
  readonly p: number;
  /** How often a pig of the second side scores above one of the first, ties half; 0 to 1. */
  readonly superiority: number;
  /** Second less first, in points or the unit of the scale; null beyond 4 000 000 pairs. */
  readonly shift: (Limited & { readonly method: "hodges-lehmann" }) | null;
}

/** Three visits or more, an indicator. */
export interface TrendCompared {
  readonly test: "cochran-armitage";
  readonly p: number;
  /** Above 0 when it became more common; null when all or none are affected. */
  readonly z: number | null;
  /** Place of each side on the time axis: days since the first visit, or its number where a date is missing. */
  readonly places: readonly number[];
  readonly unit: "days" | "order";
}

/** Three sides or more, a scale; or three groups or more, an indicator as 0 and 1. */
export interface RanksCompared {
  readonly test: "kruskal-wallis";
  readonly exact: boolean;
  readonly p: number;
  readonly h: number | null;
  readonly df: number;
}

export type Result = SharesCompared | ScoresCompared | TrendCompared | RanksCompared;

/** One indicator or scale between the sides. */
export interface Comparison {
  readonly kind: "indicator" | "scale";
  /** Its id. */
  readonly question: string;
  readonly title: string;
  readonly unit?: string;
  readonly source: string | null;
  /** `from-memory` when the limit or the scale that is read rests on memory. */
  readonly confidence: Confidence | null;
  readonly comparable: boolean;
  /** Why not; empty when comparable. */
  readonly reasons: readonly Reason[];
  readonly caveats: readonly Caveat[];
  /** Empty when not comparable. */
  readonly sides: readonly SideNumbers[];
  readonly result: Result | null;
  readonly p: number | null;
  /** After Holm, over the comparisons of the block that were made. */
  readonly p_holm: number | null;
  /** Whether p after Holm is below 1 - level. */
  readonly shown: boolean;
  readonly sentence: string;
}

/** Sides that are set against each other: of one farm (and one visit, between groups), pigs chosen in one way. */
export interface Compared {
  readonly farm: string | null;
  /** Between groups: the visit. */
  readonly visit?: string | null;
  /** Selection basis; null when several are taken together (see `mixed`). */
  readonly basis: string | null;
  readonly mixed: boolean;
  /** What the pigs are: `drawn at random`. */
  readonly pigs: string;
  /** Whether a proportion over such pigs is a prevalence. */
  readonly prevalence: boolean;
  readonly sides: readonly SideLabel[];
  /** Whether the sides are so small that not even all against none would be shown; the numbers then only describe. */
  readonly too_few: boolean;
  /** The answer in one sentence. */
  readonly answer: string;
  /** Whether anything could be compared. */
  readonly comparable: boolean;
  /** Why nothing could, or what kept all of it from being compared. */
  readonly reasons: readonly Reason[];
  readonly adjustment: { readonly method: "holm"; readonly comparisons: number };
  readonly comparisons: readonly Comparison[];
  /** What holds for all of them. */
  readonly cautions: readonly string[];
}

export interface CompareReport {
  readonly between: Between;
  /** Confidence level, between 0 and 1; a p counts as small below 1 - level. */
  readonly level: number;
  /** One sentence in plain words. */
  readonly answer: string;
  readonly blocks: readonly Compared[];
  /** Cases that took no part, and why. */
  readonly left_out: readonly string[];
}
