/** How common something is in a stratum, with its interval. */
import type { Case } from "../cases/index.ts";
import type { Indicator } from "../knowledge/index.ts";
import { type Confidence, scaleNamed } from "../score/index.ts";
import { count } from "../words/listing.ts";
import { type Corrected, corrected, correctedWords, type TestAccuracy } from "./corrected.ts";
import { groupKey, type HeadCount } from "./head-count.ts";
import { answersOf, countOf } from "./indicator-answer.ts";
import {
  type ClusterResult,
  type IntervalChoice,
  type IntervalMethod,
  intervalOf,
  type OneSided,
} from "./interval.ts";
import { reachOf } from "./selection-basis.ts";
import type { Dimension, Stratum, StratumOfCases } from "./strata.ts";
import { nothingExamined, wordingOf } from "./wording.ts";

export interface Estimate {
  /** Id of the indicator. */
  readonly indicator: string;
  readonly title: string;
  readonly stratum: Stratum;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
  /** Pigs that answered yes or no: the denominator. */
  readonly examined: number;
  readonly not_examined: number;
  /** Pigs that answered yes. */
  readonly affected: number;
  /** affected / examined, 0 to 1; null when none was examined. */
  readonly proportion: number | null;
  /** Two-sided limits, 0 to 1; null when none was examined. */
  readonly lower: number | null;
  readonly upper: number | null;
  /**
   * Exact one-sided limit when none (upper) or all (lower) are affected, 0 to 1; null otherwise. The two-sided limit
   * at the same level lies further out.
   */
  readonly one_sided: OneSided | null;
  /** Confidence level, between 0 and 1. */
  readonly level: number;
  readonly method: IntervalMethod;
  /** The group that the interval is of, where it is of a group of known size. */
  readonly population?: HeadCount;
  /** Where pens, rooms or litters were asked for. */
  readonly clusters?: ClusterResult;
  /** Where a test was said to err: the share behind the counted one. `proportion` stays that of the positives. */
  readonly true_prevalence?: Corrected;
  /** What must be known to read the interval, each a clause of `wording`; left out when there is nothing. */
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
interface EstimateChoice extends Omit<IntervalChoice, "prevalence"> {
  /** How the eye or the test errs. */
  readonly test?: TestAccuracy;
}

/**
 * Counts an indicator over a stratum.
 * @param id of the indicator
 * @param by the dimensions that the stratum was split by; what was left out and differs is said in the wording
 */
export function estimate(
  id: string,
  indicator: Indicator,
  { stratum, basis, cases }: StratumOfCases,
  by: readonly Dimension[],
  choice: EstimateChoice,
): Estimate {
  const { title } = indicator;
  const answered = answersOf(indicator, cases);
  const { affected, examined } = countOf(answered);
  const known = {
    indicator: id,
    title,
    stratum,
    basis,
    examined,
    not_examined: cases.length - examined,
    affected,
  };
  const { level, test, method: plain } = choice;
  const sources = sourcesOf(indicator, cases);
  if (examined === 0) {
    const nothing = { proportion: null, lower: null, upper: null, one_sided: null, level, method: plain };
    return { ...known, ...nothing, wording: nothingExamined(title, cases.length), ...sources };
  }
  const interval = intervalOf(answered, { ...choice, prevalence: reachOf(basis).prevalence });
  const { lower, upper, one_sided, method, population, clusters } = interval;
  const truth = test && corrected(affected, examined, test, { level, method: plain });
  const pooled = takenTogether(cases, by);
  const notes = truth === undefined ? interval.notes : [...interval.notes, correctedWords(truth, level)];
  return {
    ...known,
    proportion: affected / examined,
    lower,
    upper,
    one_sided,
    level,
    method,
    ...(population !== undefined && { population }),
    ...(clusters !== undefined && { clusters }),
    ...(truth !== undefined && { true_prevalence: truth }),
    ...(interval.notes.length > 0 && { notes: interval.notes }),
    wording: wordingOf({
      ...known,
      lower,
      upper,
      level,
      oneSided: truth === undefined ? one_sided : null,
      notes,
      ofGroup: population !== undefined,
      ...(pooled !== undefined && { pooled }),
    }),
    ...sources,
  };
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

/** What differs within the stratum because it was not split by it: `2 visits and 3 groups`. */
function takenTogether(cases: readonly Case[], by: readonly Dimension[]): string | undefined {
  const visits = new Set(cases.map((one) => one.visit?.folder));
  const groups = new Set(cases.map(groupKey));
  const parts = [
    ...(!by.includes("visit") && visits.size > 1 ? [count(visits.size, "visit")] : []),
    ...(!by.includes("group") && groups.size > 1 ? [count(groups.size, "group")] : []),
  ];
  return parts.length === 0 ? undefined : parts.join(" and ");
}
