import { requireCounts, requireLevel } from "./checks.ts";
import { normalQuantile } from "./normal.ts";

/** Counts from a study of a test on animals whose state was known. */
export interface AccuracyStudy {
  /** Positive among the affected. */
  readonly truePositive: number;
  /** Affected animals tested, 1 or more. */
  readonly affected: number;
  /** Negative among the unaffected. */
  readonly trueNegative: number;
  /** Unaffected animals tested, 1 or more. */
  readonly unaffected: number;
}

/** An interval for the true prevalence when the accuracy of the test was itself estimated. */
export interface LangReiczigelInterval {
  /** `(apparent + Sp - 1) / (Se + Sp - 1)` with the counts as they are, held within 0 and 1; null when Se + Sp <= 1. */
  readonly prevalence: number | null;
  /** Estimate from the adjusted counts, not held; the centre of the interval less `shift`. */
  readonly adjusted: number;
  /** The shift of the centre, dP. */
  readonly shift: number;
  readonly standardError: number;
  /** Held within 0 and 1, like `upper`. */
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
  readonly method: "lang-reiczigel";
}

/**
 * Confidence interval for the true prevalence when sensitivity and specificity are estimates from samples.
 *
 * With z the normal quantile, the prevalence sample gains z^2 animals, half of them positive, and each accuracy
 * sample two, one of them positive; on these counts `P = (ap + Sp - 1) / (Se + Sp - 1)`, the centre shifts by
 * `dP = 2 z^2 (P vSe - (1 - P) vSp)` and the squared standard error is
 * `(ap (1-ap)/n + P^2 vSe + (1-P)^2 vSp) / (Se + Sp - 1)^2`.
 *
 * @param positive whole number from 0 to `examined`.
 * @param examined whole number from 1 to 10 000 000.
 * @throws RangeError when a count or the level is outside its range, or the adjusted Se + Sp is not above 1.
 *
 * Source: Lang & Reiczigel 2014, Prev Vet Med 113:13-22 (the added counts from memory).
 */
export function langReiczigelInterval(
  positive: number,
  examined: number,
  study: AccuracyStudy,
  { level = 0.95 }: { readonly level?: number } = {},
): LangReiczigelInterval {
  requireCounts(positive, examined);
  requireCounts(study.truePositive, study.affected);
  requireCounts(study.trueNegative, study.unaffected);
  requireLevel(level);
  const z = normalQuantile((1 - level) / 2, "upper");
  const total = examined + z * z;
  const apparent = (positive + (z * z) / 2) / total;
  const sensitivity = (study.truePositive + 1) / (study.affected + 2);
  const specificity = (study.trueNegative + 1) / (study.unaffected + 2);
  const youden = sensitivity + specificity - 1;
  if (!(youden > 0)) {
    throw new RangeError(`sensitivity + specificity must be above 1, got ${sensitivity} + ${specificity}`);
  }
  const adjusted = (apparent + specificity - 1) / youden;
  const varianceSe = (sensitivity * (1 - sensitivity)) / (study.affected + 2);
  const varianceSp = (specificity * (1 - specificity)) / (study.unaffected + 2);
  const shift = 2 * z * z * (adjusted * varianceSe - (1 - adjusted) * varianceSp);
  const standardError =
    Math.sqrt(
      (apparent * (1 - apparent)) / total + adjusted ** 2 * varianceSe + (1 - adjusted) ** 2 * varianceSp,
    ) / youden;
  const held = (value: number) => Math.min(1, Math.max(0, value));
  return {
    prevalence: plain(positive / examined, study, held),
    adjusted,
    shift,
    standardError,
    lower: held(adjusted + shift - z * standardError),
    upper: held(adjusted + shift + z * standardError),
    level,
    method: "lang-reiczigel",
  };
}

function plain(apparent: number, study: AccuracyStudy, held: (value: number) => number): number | null {
  const specificity = study.trueNegative / study.unaffected;
  const youden = study.truePositive / study.affected + specificity - 1;
  return youden > 0 ? held((apparent + specificity - 1) / youden) : null;
}
