import { type BinomialInterval, binomialInterval } from "./binomial-interval.ts";
import { requireTable } from "./kappa.ts";

/** Plain agreement of two readers, and the same adjusted for prevalence and bias. */
export interface PercentAgreement {
  /** Proportion of subjects put into the same category, with its Clopper-Pearson interval. */
  readonly agreement: BinomialInterval;
  /** `(k po - 1) / (k - 1)`: kappa as it would be with all categories used alike by both readers. */
  readonly pabak: { readonly value: number; readonly lower: number; readonly upper: number };
}

/**
 * Proportion of agreement of two readers, and PABAK, the prevalence-adjusted bias-adjusted kappa, over k
 * categories. The interval of PABAK is that of the agreement carried over, which is exact.
 *
 * @param table as for Cohen's kappa: k by k counts, k at least 2, at least one subject.
 * @throws RangeError when the table or the level does not fit.
 *
 * Source: Byrt, Bishop & Carlin 1993, J Clin Epidemiol 46:423-429 (citation from memory).
 */
export function percentAgreement(
  table: readonly (readonly number[])[],
  { level = 0.95 }: { readonly level?: number } = {},
): PercentAgreement {
  const n = requireTable(table);
  const equal = table.reduce((sum, row, i) => sum + (row[i] ?? 0), 0);
  const k = table.length;
  const agreement = binomialInterval(equal, n, { level });
  const adjusted = (share: number) => (k * share - 1) / (k - 1);
  const { proportion, lower, upper } = agreement;
  return {
    agreement,
    pabak: { value: adjusted(proportion), lower: adjusted(lower), upper: adjusted(upper) },
  };
}
