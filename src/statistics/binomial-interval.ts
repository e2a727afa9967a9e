import { bothLimits, clopperPearsonLower, jeffreysLower } from "./beta-limits.ts";
import { blakerLower } from "./blaker.ts";
import { requireCounts, requireLevel } from "./checks.ts";
import { agrestiCoullLimits, wilsonLimits } from "./closed-form-limits.ts";
import { midPLower } from "./mid-p.ts";

type Limits = { readonly lower: number; readonly upper: number };

const LIMITS = {
  "clopper-pearson": (x, n, alpha) => bothLimits(clopperPearsonLower, x, n, alpha),
  "mid-p": (x, n, alpha) => bothLimits(midPLower, x, n, alpha),
  blaker: (x, n, alpha) => bothLimits(blakerLower, x, n, alpha),
  wilson: wilsonLimits,
  jeffreys: (x, n, alpha) => bothLimits(jeffreysLower, x, n, alpha),
  "agresti-coull": agrestiCoullLimits,
} as const satisfies Record<string, (x: number, n: number, alpha: number) => Limits>;

/** Name of a confidence interval for a proportion. */
export type BinomialMethod = keyof typeof LIMITS;

/** The methods of {@link binomialInterval}, the default first. */
export const BINOMIAL_METHODS = Object.keys(LIMITS) as readonly BinomialMethod[];

/** What may be chosen for a {@link binomialInterval}. */
export interface BinomialIntervalOptions {
  /** Confidence level, strictly between 0 and 1; 0.95 when left out. */
  readonly level?: number;
  /** `clopper-pearson` when left out. */
  readonly method?: BinomialMethod;
}

/** A two-sided confidence interval for a proportion. */
export interface BinomialInterval {
  /** Lower limit, a proportion from 0 to 1. */
  readonly lower: number;
  /** Upper limit, a proportion from 0 to 1. */
  readonly upper: number;
  /** `affected / examined`. */
  readonly proportion: number;
  readonly level: number;
  readonly method: BinomialMethod;
}

/**
 * Two-sided confidence interval for the proportion affected, from a random sample of a large population.
 *
 * - `clopper-pearson` (default): exact, never covers less than the level; two-sided also when nothing or
 *   everything is affected (0 of 20 at 95 %: up to 0.168, not 0.139). Clopper & Pearson 1934, Biometrika 26:404-413.
 * - `blaker`: exact, inside Clopper-Pearson. Blaker 2000, Can J Stat 28:783-798.
 * - `mid-p`: near the level on average. Newcombe 1998, Stat Med 17:857-872, method 6.
 * - `wilson`: score interval without continuity correction. Newcombe 1998, method 3.
 * - `jeffreys`: Bayesian with Beta(1/2, 1/2), 0 and 1 at the ends. Brown, Cai & DasGupta 2001, Stat Sci 16:101-133.
 * - `agresti-coull`: adjusted Wald, cut off at 0 and 1. Agresti & Coull 1998, Am Stat 52:119-126.
 *
 * At levels of 0.1 and below `mid-p` and `jeffreys` can leave the proportion in the sample itself outside (1 of 3 at 0.01:
 * 0.3435 to 0.3511 by mid-P); that is how they are defined. The others never do.
 *
 * @param affected whole number from 0 to `examined`.
 * @param examined whole number from 1 to 10 000 000.
 * @throws RangeError when a count is not whole or out of its range (`examined` = 0 included: there is no
 *   proportion to estimate), the level is not strictly between 0 and 1, or the method is not one of the six.
 */
export function binomialInterval(
  affected: number,
  examined: number,
  { level = 0.95, method = "clopper-pearson" }: BinomialIntervalOptions = {},
): BinomialInterval {
  requireCounts(affected, examined);
  requireLevel(level);
  if (!Object.hasOwn(LIMITS, method)) {
    throw new RangeError(`method must be one of ${BINOMIAL_METHODS.join(", ")}, got ${method}`);
  }
  const { lower, upper } = LIMITS[method](affected, examined, 1 - level);
  return { lower, upper, proportion: affected / examined, level, method };
}
