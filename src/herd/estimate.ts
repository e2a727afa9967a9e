/** How common something is in a stratum, with its interval. */
import type { Case } from "../cases/index.ts";
import type { Indicator } from "../knowledge/index.ts";
import { type Confidence, scaleNamed } from "../score/index.ts";
import { type Corrected, corrected, correctedWords, type TestAccuracy } from "./corrected.ts";
import { answersOf, countOf } from "./indicator-answer.ts";
import type { IntervalChoice } from "./interval.ts";
import { type Share, shareOf } from "./share.ts";
import type { Standing } from "./standing.ts";
import type { Stratum, StratumOfCases } from "./strata.ts";
import { wordingOf } from "./wording.ts";

/** `one_sided` is the exact one-sided limit when none (upper) or all (lower) are affected; the two-sided one lies further out. */
export interface Estimate extends Omit<Share, "notes"> {
  /** Id of the indicator. */
  readonly indicator: string;
  readonly title: string;
  readonly stratum: Stratum;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
  /** Pigs that answered yes or no: the denominator. */
  readonly examined: number;
  /** Pigs in which the organ was looked at, but not in the way that the question needs. */
  readonly not_graded: number;
  readonly not_examined: number;
  /** Pigs that answered yes. */
  readonly affected: number;
  /** Confidence level, between 0 and 1. */
  readonly level: number;
  /** Where a test was said to err: the share behind the counted one. `proportion` stays that of the positives. */
  readonly true_prevalence?: Corrected;
  /** What must be known to read the numbers, each a clause of `wording`; left out when there is nothing. */
  readonly notes?: readonly string[];
  /** What the numbers may be said to mean. */
  readonly wording: string;
  /** Who says that this limit means something; null when the indicator names nobody. */
  readonly source: string | null;
  readonly confidence: Confidence | null;
  /** The scale that is read, which has a source of its own. */
  readonly scale?: { readonly id: string; readonly source: string; readonly confidence: Confidence };
}

/** How intervals are made of a stratum. */
export interface EstimateChoice extends IntervalChoice {
  /** How the eye or the test errs. */
  readonly test?: TestAccuracy;
}

/** Counts an indicator over a stratum. @param id of the indicator */
export function estimate(
  id: string,
  indicator: Indicator,
  { stratum, basis, cases }: StratumOfCases,
  standing: Standing,
  choice: EstimateChoice,
): Estimate {
  const { title } = indicator;
  const { answered, not_graded, not_examined } = answersOf(indicator, cases);
  const { affected, examined } = countOf(answered);
  const { level, test, method: plain } = choice;
  const { notes: read, ...share } = shareOf(answered, cases.length, standing, choice);
  const truth =
    test && examined > 1
      ? heldBack(corrected(affected, examined, test, { level, method: plain }), share, standing)
      : undefined;
  const counted = { title, basis, affected, examined, not_graded, not_examined, level, share };
  const clauses = truth === undefined ? read : [...read, correctedWords(truth, level)];
  return {
    indicator: id,
    title,
    stratum,
    basis,
    examined,
    not_graded,
    not_examined,
    affected,
    ...share,
    level,
    ...(truth !== undefined && { true_prevalence: truth }),
    ...(read.length > 0 && { notes: read }),
    wording: wordingOf({ ...counted, notes: clauses, corrected: truth !== undefined }),
    ...sourcesOf(indicator, cases),
  };
}

/** The corrected interval is one of pigs drawn at random from one group, and of no others. */
function heldBack(truth: Corrected, { reach }: Pick<Share, "reach">, standing: Standing): Corrected {
  if (reach === "prevalence" && standing.for === "group") return truth;
  const withheld =
    "the corrected interval is withheld: it is known for pigs drawn at random from one group only";
  return { ...truth, lower: null, upper: null, withheld };
}

/** Who says that the limit means something, and the scale that is read. */
export const sourcesOf = (
  indicator: Indicator,
  cases: readonly Case[],
): Pick<Estimate, "source" | "confidence" | "scale"> => ({
  source: indicator.source?.cite ?? null,
  confidence: indicator.source?.confidence ?? null,
  ...scaleSource(indicator, cases),
});

function scaleSource({ score }: Indicator, [first]: readonly Case[]): Pick<Estimate, "scale"> {
  const scale = score && first && scaleNamed(first, score.scale);
  if (scale === undefined) return {};
  return { scale: { id: scale.id, source: scale.source.cite, confidence: scale.source.confidence } };
}
