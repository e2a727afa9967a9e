/** How common something is in a stratum, with its exact interval. */
import type { Case } from "../cases/index.ts";
import type { Indicator } from "../knowledge/index.ts";
import { type Confidence, scaleNamed } from "../score/index.ts";
import { binomialInterval } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { indicatorAnswer } from "./indicator-answer.ts";
import { oneSidedLimit } from "./one-sided-limit.ts";
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
  readonly one_sided: { readonly limit: "lower" | "upper"; readonly value: number } | null;
  /** Confidence level, between 0 and 1. */
  readonly level: number;
  readonly method: "clopper-pearson";
  /** What the numbers may be said to mean. */
  readonly wording: string;
  /** Who says that this limit means something; null when the indicator names nobody. */
  readonly source: string | null;
  readonly confidence: Confidence | null;
  /** The scale that is read, which has a source of its own. */
  readonly scale?: { readonly id: string; readonly source: string; readonly confidence: Confidence };
}

/**
 * Counts an indicator over a stratum. The interval is Clopper & Pearson 1934, Biometrika 26:404-413.
 * @param id of the indicator
 * @param by the dimensions that the stratum was split by; what was left out and differs is said in the wording
 * @param level confidence level, between 0 and 1
 */
export function estimate(
  id: string,
  indicator: Indicator,
  { stratum, basis, cases }: StratumOfCases,
  by: readonly Dimension[],
  level: number,
): Estimate {
  const answers = cases.map((one) => indicatorAnswer(indicator, one));
  const affected = answers.filter((answer) => answer === "yes").length;
  const not_examined = answers.filter((answer) => answer === "not examined").length;
  const examined = answers.length - not_examined;
  const { title } = indicator;
  const interval = examined === 0 ? undefined : binomialInterval(affected, examined, { level });
  const pooled = takenTogether(cases, by);
  return {
    indicator: id,
    title,
    stratum,
    basis,
    examined,
    not_examined,
    affected,
    proportion: interval?.proportion ?? null,
    lower: interval?.lower ?? null,
    upper: interval?.upper ?? null,
    one_sided: examined === 0 ? null : oneSidedLimit(affected, examined, level),
    level,
    method: "clopper-pearson",
    wording:
      interval === undefined
        ? nothingExamined(title, cases.length)
        : wordingOf({
            title,
            basis,
            affected,
            examined,
            not_examined,
            lower: interval.lower,
            upper: interval.upper,
            level,
            ...(pooled !== undefined && { pooled }),
          }),
    source: indicator.source?.cite ?? null,
    confidence: indicator.source?.confidence ?? null,
    ...scaleSource(indicator, cases),
  };
}

function scaleSource({ score }: Indicator, [first]: readonly Case[]): Pick<Estimate, "scale"> {
  const scale = score && first && scaleNamed(first, score.scale);
  if (scale === undefined) return {};
  return { scale: { id: scale.id, source: scale.source.cite, confidence: scale.source.confidence } };
}

/** What differs within the stratum because it was not split by it: `2 visits and 3 groups`. */
function takenTogether(cases: readonly Case[], by: readonly Dimension[]): string | undefined {
  const visits = new Set(cases.map((one) => one.visit?.folder));
  const groups = new Set(cases.map((one) => JSON.stringify([one.farm?.folder, one.record.pig?.group])));
  const parts = [
    ...(!by.includes("visit") && visits.size > 1 ? [count(visits.size, "visit")] : []),
    ...(!by.includes("group") && groups.size > 1 ? [count(groups.size, "group")] : []),
  ];
  return parts.length === 0 ? undefined : parts.join(" and ");
}
