/** The share that is affected behind the share that was called so, when the eye or the test errs. */
import {
  binomialInterval,
  type LangReiczigelInterval,
  langReiczigelInterval,
  normalQuantile,
  truePrevalence,
} from "../statistics/index.ts";
import { levelPercent, percent, percentRange } from "../words/percent.ts";
import type { HerdInterval } from "./interval.ts";

/** How often something was called rightly among pigs whose state was known. */
export interface RightCount {
  readonly right: number;
  /** 1 or more. */
  readonly of: number;
}

/** Sensitivity and specificity: both as known shares from 0 to 1, or both as counts from a study. */
export type TestAccuracy =
  | { readonly sensitivity: number; readonly specificity: number }
  | { readonly sensitivity: RightCount; readonly specificity: RightCount };

/** The true share behind an apparent one. */
export interface Corrected {
  /** 0 to 1, held within; null when sensitivity and specificity of the counts do not add up to more than 1. */
  readonly prevalence: number | null;
  /** 0 to 1; null when they are withheld. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** Why the limits are withheld, a clause; null when they are not. */
  readonly withheld: string | null;
  /** Of shares: the interval of the apparent share that was carried over. */
  readonly interval: HerdInterval | null;
  readonly method: "rogan-gladen" | "lang-reiczigel";
  /** 0 to 1. */
  readonly sensitivity: number;
  readonly specificity: number;
  /** The counts that sensitivity and specificity come from; null when they are taken as known. */
  readonly study: { readonly sensitivity: RightCount; readonly specificity: RightCount } | null;
  /** Before it is held: below 0 when there are fewer positives than false positives to be expected. */
  readonly unclipped: number | null;
}

const counted = (
  accuracy: TestAccuracy,
): accuracy is { readonly sensitivity: RightCount; readonly specificity: RightCount } =>
  typeof accuracy.sensitivity !== "number";

/**
 * Rogan & Gladen 1978 with the interval of the apparent share carried over; Lang & Reiczigel 2014 for counts.
 * @throws RangeError when the two do not add up to more than 1, or are no shares or counts
 */
export function corrected(
  positive: number,
  examined: number,
  accuracy: TestAccuracy,
  { level, method }: { readonly level: number; readonly method: HerdInterval },
): Corrected {
  if (counted(accuracy)) {
    const { sensitivity, specificity } = accuracy;
    const study = {
      truePositive: sensitivity.right,
      affected: sensitivity.of,
      trueNegative: specificity.right,
      unaffected: specificity.of,
    };
    const found = langReiczigelInterval(positive, examined, study, { level });
    const withheld = tooNarrow(found, positive, examined) ? narrow : null;
    return {
      prevalence: found.prevalence,
      lower: withheld === null ? found.lower : null,
      upper: withheld === null ? found.upper : null,
      withheld,
      interval: null,
      method: "lang-reiczigel",
      sensitivity: sensitivity.right / sensitivity.of,
      specificity: specificity.right / specificity.of,
      study: accuracy,
      unclipped: null,
    };
  }
  const found = truePrevalence(positive, examined, accuracy, { level, method });
  const { prevalence, lower, upper, unclipped } = found;
  return {
    prevalence,
    lower,
    upper,
    withheld: null,
    interval: method,
    method: "rogan-gladen",
    ...accuracy,
    study: null,
    unclipped,
  };
}

/**
 * Whether the approximate interval, before it is held within 0 and 1, is narrower than the exact one of the positives
 * alone: the doubt in the test cannot have made it surer (choice of this project).
 */
function tooNarrow(
  { standardError, level }: LangReiczigelInterval,
  positive: number,
  examined: number,
): boolean {
  const { lower, upper } = binomialInterval(positive, examined, { level });
  return 2 * normalQuantile((1 - level) / 2, "upper") * standardError < upper - lower;
}

const narrow =
  "the corrected interval is withheld: this approximation gives a narrower one than the exact interval of the positives alone, so it cannot be relied on with these numbers";

/** `a sensitivity of 90.0 % and a specificity of 98.0 %, taken as known` */
export function accuracyWords(found: Corrected): string {
  const { study, sensitivity, specificity } = found;
  const of = (share: number, part: RightCount | undefined) =>
    `${percent(share)}${part === undefined ? "" : ` (${part.right} of ${part.of})`}`;
  const accuracy = `a sensitivity of ${of(sensitivity, study?.sensitivity)} and a specificity of ${of(specificity, study?.specificity)}`;
  return `${accuracy}, ${study === null ? "taken as known" : "both uncertain"}`;
}

/** Whether fewer are positive than are to be expected of a group that is free. */
export const belowFalsePositives = ({ unclipped }: Corrected): boolean => unclipped !== null && unclipped < 0;

/** The clause for a sentence. @param level confidence level, between 0 and 1 */
export function correctedWords(found: Corrected, level: number): string {
  const { prevalence, lower, upper } = found;
  const said = [
    ...(prevalence === null ? [] : [percent(prevalence)]),
    ...(lower === null || upper === null ? [] : [`${levelPercent(level)} CI ${percentRange(lower, upper)}`]),
  ];
  return [
    `corrected for ${accuracyWords(found)}${said.length === 0 ? "" : `: ${said.join(", ")}`}`,
    ...(belowFalsePositives(found) ? [fewPositives] : []),
    ...(found.withheld === null ? [] : [found.withheld]),
  ].join("; ");
}

export const fewPositives = "fewer are positive than false positives are to be expected";
