import { binomialInterval } from "./binomial-interval.ts";
import { requireLevel } from "./checks.ts";
import { normalQuantile } from "./normal.ts";
import { whereFalls } from "./score-search.ts";
import { requireTwoGroups, swapped, type TwoGroups } from "./two-by-two.ts";

const RISK_RATIO_METHODS = ["donner-zou", "koopman"] as const;

/** Name of an interval for a ratio of two proportions. */
export type RiskRatioMethod = (typeof RISK_RATIO_METHODS)[number];

/** The ratio of two proportions with its interval. */
export interface RiskRatio {
  /** `(x1 / n1) / (x2 / n2)`; infinite when only x2 is 0, null when both are. */
  readonly ratio: number | null;
  /** 0 when x1 is 0. */
  readonly lower: number;
  /** Infinite when x2 is 0. */
  readonly upper: number;
  readonly level: number;
  readonly method: RiskRatioMethod;
}

/** ln of a ratio beyond which counts up to 10 000 000 cannot lead. */
const FARTHEST = 60;

/**
 * Ratio of the proportions affected in two independent groups (relative risk), with its interval.
 *
 * - `donner-zou` (default): the ratios for which the Clopper-Pearson limits of both groups, joined by their squares, hold
 *   `p1 - ratio p2 = 0`; it leaves out 1 where the `zou-donner` interval of the difference leaves out 0. Donner & Zou 2012,
 *   Stat Methods Med Res 21:347-359 (from memory).
 * - `koopman`: those that a chi-squared test at the most likely proportions with that ratio does not reject; right on
 *   average and too narrow for some shares. Koopman 1984, Biometrics 40:513-517.
 *
 * @param options.level confidence level; 0.95 when left out.
 * @throws RangeError when a count or the level is out of its range or the method is neither.
 */
export function riskRatio(
  groups: TwoGroups,
  {
    level = 0.95,
    method = "donner-zou",
  }: { readonly level?: number; readonly method?: RiskRatioMethod } = {},
): RiskRatio {
  requireTwoGroups(groups);
  requireLevel(level);
  if (!RISK_RATIO_METHODS.includes(method)) {
    throw new RangeError(`method must be one of ${RISK_RATIO_METHODS.join(", ")}, got ${method}`);
  }
  const { x1, n1, x2, n2 } = groups;
  const z = normalQuantile((1 - level) / 2, "upper");
  const lowerOf = (sides: TwoGroups): number =>
    method === "koopman" ? 1 / upperLimit(swapped(sides), z) : joinedLower(sides, level);
  return {
    ratio: x1 === 0 && x2 === 0 ? null : (x1 / n1) * (n2 / x2),
    lower: lowerOf(groups),
    upper: method === "koopman" ? upperLimit(groups, z) : 1 / lowerOf(swapped(groups)),
    level,
    method,
  };
}

/** The smaller root R of `(p1 - R p2)^2 = (p1 - l1)^2 + R^2 (u2 - p2)^2`, written so that no denominator is near 0. */
function joinedLower({ x1, n1, x2, n2 }: TwoGroups, level: number): number {
  if (x1 === 0) return 0;
  const [p1, p2] = [x1 / n1, x2 / n2];
  const { lower } = binomialInterval(x1, n1, { level });
  const { upper } = binomialInterval(x2, n2, { level });
  const first = lower * (2 * p1 - lower);
  return first / (p1 * p2 + Math.sqrt(Math.max(0, (p1 * p2) ** 2 - first * upper * (2 * p2 - upper))));
}

function upperLimit(groups: TwoGroups, z: number): number {
  if (groups.x2 === 0) return Number.POSITIVE_INFINITY;
  return Math.exp(whereFalls((log) => score(groups, Math.exp(log)), -z, -FARTHEST, FARTHEST));
}

/** `(x1/n1 - φ x2/n2) / √V`, V at the most likely proportions with `p1 = φ p2` (a root of a quadratic). */
function score({ x1, n1, x2, n2 }: TwoGroups, ratio: number): number {
  const gap = x1 / n1 - (ratio * x2) / n2;
  if (gap === 0) return 0;
  const a = ratio * (n1 + n2);
  const b = ratio * (n1 + x2) + x1 + n2;
  const c = x1 + x2;
  const p2 = (2 * c) / (b + Math.sqrt(Math.max(0, b * b - 4 * a * c)));
  const p1 = Math.min(1, ratio * p2);
  return gap / Math.sqrt((p1 * (1 - p1)) / n1 + (ratio * ratio * p2 * Math.max(0, 1 - p2)) / n2);
}
