import { binomialInterval } from "./binomial-interval.ts";
import { requireCounts, requireLevel, requireProbability, requireWhole } from "./checks.ts";

/** The share of animals affected, from equal pools of them. */
export interface PooledPrevalence {
  /** Maximum likelihood, held within 0 and 1. */
  readonly prevalence: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
}

/**
 * The share of animals that are affected behind the share of positive pools, all of one size.
 *
 * A pool of `size` animals is negative when none is affected, `(1 - p)^size`, so the maximum likelihood estimate is
 * `1 - (1 - positive / pools)^(1 / size)`, and the exact interval of the pools (Clopper-Pearson) is carried over by the same
 * formula, which rises. With a pool test that errs, the share of positive pools is first corrected as by Rogan & Gladen and
 * held within 0 and 1.
 *
 * @param positive whole number from 0 to `pools`.
 * @param pools whole number from 1 to 10 000 000.
 * @param size animals in each pool, whole number from 1.
 * @throws RangeError when an argument is outside its range, or Se + Sp is not above 1.
 *
 * Source: Cowling, Gardner & Johnson 1999, Prev Vet Med 39:211-225, methods 2 and 3 (from memory); derived here.
 */
export function pooledPrevalence(
  positive: number,
  pools: number,
  size: number,
  {
    level = 0.95,
    sensitivity = 1,
    specificity = 1,
  }: { readonly level?: number; readonly sensitivity?: number; readonly specificity?: number } = {},
): PooledPrevalence {
  requireCounts(positive, pools);
  requireLevel(level);
  requireWhole("size", size, 1, 10_000_000);
  requireProbability("sensitivity", sensitivity);
  requireProbability("specificity", specificity);
  const youden = sensitivity + specificity - 1;
  if (!(youden > 0))
    throw new RangeError(`sensitivity + specificity must be above 1, got ${sensitivity} + ${specificity}`);
  const carried = (share: number): number => {
    const held = Math.min(1, Math.max(0, (share - (1 - specificity)) / youden));
    return 0 - Math.expm1(Math.log1p(-held) / size);
  };
  const { lower, upper } = binomialInterval(positive, pools, { level });
  return { prevalence: carried(positive / pools), lower: carried(lower), upper: carried(upper), level };
}
