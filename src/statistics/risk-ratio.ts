import { requireLevel } from "./checks.ts";
import { normalQuantile } from "./normal.ts";
import { whereFalls } from "./score-search.ts";
import { requireTwoGroups, swapped, type TwoGroups } from "./two-by-two.ts";

/** The ratio of two proportions with its interval. */
export interface RiskRatio {
  /** `(x1 / n1) / (x2 / n2)`; infinite when only x2 is 0, null when both are. */
  readonly ratio: number | null;
  /** 0 when x1 is 0. */
  readonly lower: number;
  /** Infinite when x2 is 0. */
  readonly upper: number;
  readonly level: number;
  readonly method: "koopman";
}

/** ln of a ratio beyond which counts up to 10 000 000 cannot lead. */
const FARTHEST = 60;

/**
 * Ratio of the proportions affected in two independent groups (relative risk), with the score interval: the
 * ratios that a chi-squared test at the most likely proportions with that ratio does not reject.
 * Source: Koopman 1984, Biometrics 40:513-517.
 *
 * @param options.level confidence level; 0.95 when left out.
 * @throws RangeError when a count or the level is out of its range.
 */
export function riskRatio(groups: TwoGroups, { level = 0.95 }: { readonly level?: number } = {}): RiskRatio {
  requireTwoGroups(groups);
  requireLevel(level);
  const { x1, n1, x2, n2 } = groups;
  const z = normalQuantile((1 - level) / 2, "upper");
  return {
    ratio: x1 === 0 && x2 === 0 ? null : (x1 / n1) * (n2 / x2),
    lower: 1 / upperLimit(swapped(groups), z),
    upper: upperLimit(groups, z),
    level,
    method: "koopman",
  };
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
