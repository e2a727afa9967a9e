/** What may be asked of a comparison and what it is answered with. Sides stand in order: visits by date, groups as in the farm file. */
import { type ClusterKind, clusterKinds } from "../herd/index.ts";
import type { comparability } from "../knowledge/index.ts";
import type { Confidence } from "../score/index.ts";
import type { SharesRule } from "../statistics/index.ts";
import type { ClaimOn, Result } from "./judgement/results.ts";
import type { Trial } from "./sides/arms.ts";
import type { Where } from "./sides/facets.ts";

/**
 * `ill`: pigs chosen for signs against healthy comparison pigs of one visit. `treatment`: treated against control pens or
 * groups of one visit.
 */
export type Between = "visits" | "groups" | "ill" | "treatment";

/** What pigs of a side may belong together by; `none` takes every pig for itself. */
export type Cluster = ClusterKind | "none";
export const clusterNames: readonly Cluster[] = [...clusterKinds, "none"];

/** What pigs share, in words. */
export const clusterWord = (cluster: Cluster): string => (cluster === "none" ? "pig" : cluster);

/** Something on which the sides must have something in common. */
export type Factor = keyof typeof comparability.factors;

export interface CompareOptions {
  /** Default: visits when a farm has two or more, else groups. */
  readonly between?: Between;
  /** Only cases with these values. */
  readonly where?: Where;
  /** Ids. Default: all of the settings; naming some of one kind leaves out the other kind. */
  readonly indicators?: readonly string[];
  readonly scales?: readonly string[];
  /** Factors on which the sides may differ altogether; each number then carries the caveat. */
  readonly evenIf?: readonly Factor[];
  /** What pigs share that makes them alike. Default: pens. Not to be chosen between treatment: there it is what was allocated. */
  readonly cluster?: Cluster;
  /** Confidence level, between 0 and 1. Default: that of the settings (the highest, should they differ). */
  readonly level?: number;
  /** Start of the random numbers by which p is adjusted for several questions; 1 when left out. */
  readonly seed?: number;
}

/** The options with their defaults filled in, as every stage has them. */
export interface Asked extends CompareOptions {
  readonly between: Between;
  readonly evenIf: readonly Factor[];
  readonly cluster: Cluster;
  readonly level: number;
  readonly seed: number;
  /** How two shares are tested, from the settings. */
  readonly sharesTest: SharesRule;
}

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

/** How old the pigs of a side are. */
export interface Ages {
  /** In days. */
  readonly median: number;
  readonly least: number;
  readonly greatest: number;
  /** Pigs whose age is not recorded. */
  readonly not_recorded: number;
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
  /** Null where none is recorded. */
  readonly ages: Ages | null;
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

/** One indicator or scale between the sides. */
export interface Comparison {
  readonly kind: "indicator" | "scale";
  /** Its id. */
  readonly question: string;
  readonly title: string;
  /** The organ it is read from; what is read from one organ is one question. */
  readonly organ: string;
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
  readonly claim_on: ClaimOn | null;
  /** Why nothing is claimed whatever the numbers; null when it may be. */
  readonly no_claim: string | null;
  /** Of the test that `claim_on` names; null when nothing can be claimed. */
  readonly p: number | null;
  /** The least p that this test could have given for so many pigs (pens); null where it was not worked out. */
  readonly least_p: number | null;
  /** Allowing for all comparisons of the block of which something could be claimed; never below `p`. */
  readonly p_adjusted: number | null;
  /** Whether `p_adjusted` is below 1 - level. */
  readonly shown: boolean;
  readonly sentence: string;
  /** Why a test and an interval of it say different things; null where they agree. */
  readonly note: string | null;
}

/** How p was adjusted for the number of comparisons: by the smallest p, sides dealt out anew within strata. */
export interface Adjustment {
  readonly method: "smallest-p";
  /** Comparisons that were allowed for, and the questions that they ask: one an organ. */
  readonly comparisons: number;
  readonly questions: number;
  /** Indicator that the visit asked about before its result; it needs no correction. Null where it asked none. */
  readonly without: string | null;
  /** 0 when there was nothing to adjust. */
  readonly permutations: number;
  readonly seed: number;
}

/** Sides that are set against each other: of one farm (and one visit, between groups), pigs chosen in one way. */
export interface Compared {
  readonly farm: string | null;
  /** Of one visit (all but visits): the visit. */
  readonly visit?: string | null;
  /** Between treatment only. */
  readonly trial?: Trial;
  /** Selection basis; null when several are taken together: `mixed`, or random and whole groups, which both stand for theirs. */
  readonly basis: string | null;
  readonly mixed: boolean;
  /** What the pigs are: `drawn at random`. */
  readonly pigs: string;
  /** Whether a proportion over such pigs is a prevalence. */
  readonly prevalence: boolean;
  readonly sides: readonly SideLabel[];
  /** Whether no test of the block could have shown anything with so few pigs; the numbers then only describe. */
  readonly too_few: boolean;
  /** The answer in one sentence. */
  readonly answer: string;
  /** Whether anything could be compared. */
  readonly comparable: boolean;
  /** Why nothing could, or what kept all of it from being compared. */
  readonly reasons: readonly Reason[];
  readonly adjustment: Adjustment;
  readonly comparisons: readonly Comparison[];
  /** What holds for all of them. */
  readonly cautions: readonly string[];
}

export interface CompareReport {
  readonly between: Between;
  /** What pigs were taken to share. */
  readonly cluster: Cluster;
  /** Confidence level, between 0 and 1; a p counts as small below 1 - level. */
  readonly level: number;
  /** One sentence in plain words. */
  readonly answer: string;
  readonly blocks: readonly Compared[];
  /** Cases that took no part, and why. */
  readonly left_out: readonly string[];
}
