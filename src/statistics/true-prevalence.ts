import { type BinomialMethod, binomialInterval } from "./binomial-interval.ts";
import { requireCounts, requireLevel, requireProbability } from "./checks.ts";
import { normalQuantile } from "./normal.ts";

/** How well a test or an eye tells affected from unaffected, as known numbers from 0 to 1. */
export interface Accuracy {
  readonly sensitivity: number;
  readonly specificity: number;
}

/** The true prevalence behind an apparent one. */
export interface TruePrevalence {
  /** Proportion positive. */
  readonly apparent: number;
  /** True prevalence, held within 0 and 1. */
  readonly prevalence: number;
  /** The same before it is held; below 0 when there are fewer positives than false positives to be expected. */
  readonly unclipped: number;
  readonly standardError: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
  readonly method: BinomialMethod | "wald";
}

/**
 * True prevalence from the positives of an imperfect test, `(apparent + Sp - 1) / (Se + Sp - 1)`, with the
 * accuracy taken as known without error.
 *
 * The interval of the apparent prevalence (Clopper-Pearson when left out) is carried over by the same formula
 * and held within 0 and 1; `wald` is the estimate -+ z standard errors, not held.
 *
 * @param positive whole number from 0 to `examined`.
 * @param examined whole number from 1 to 10 000 000.
 * @throws RangeError when an argument is outside its range, or Se + Sp is not above 1: such a test says nothing.
 *
 * Source: Rogan & Gladen 1978, Am J Epidemiol 107:71-76; intervals carried over: Reiczigel, Földi & Ózsvári 2010,
 * Epidemiol Infect 138:1674-1678.
 */
export function truePrevalence(
  positive: number,
  examined: number,
  accuracy: Accuracy,
  {
    level = 0.95,
    method = "clopper-pearson",
  }: { readonly level?: number; readonly method?: BinomialMethod | "wald" } = {},
): TruePrevalence {
  requireCounts(positive, examined);
  requireLevel(level);
  const { sensitivity, specificity } = accuracy;
  requireProbability("sensitivity", sensitivity);
  requireProbability("specificity", specificity);
  const youden = sensitivity + specificity - 1;
  if (!(youden > 0)) {
    throw new RangeError(`sensitivity + specificity must be above 1, got ${sensitivity} + ${specificity}`);
  }
  const held = (value: number) => Math.min(1, Math.max(0, value));
  const apparent = positive / examined;
  const carried = (share: number) => (share - (1 - specificity)) / youden;
  const unclipped = carried(apparent);
  const standardError = Math.sqrt((apparent * (1 - apparent)) / examined) / youden;
  const common = { apparent, prevalence: held(unclipped), unclipped, standardError, level, method };
  if (method === "wald") {
    const margin = normalQuantile((1 - level) / 2, "upper") * standardError;
    return { ...common, lower: unclipped - margin, upper: unclipped + margin };
  }
  const { lower, upper } = binomialInterval(positive, examined, { level, method });
  return { ...common, lower: held(carried(lower)), upper: held(carried(upper)) };
}
