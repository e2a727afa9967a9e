import { binomialInterval } from "./binomial-interval.ts";
import { requireLevel } from "./checks.ts";
import { wilsonLimits } from "./closed-form-limits.ts";
import { normalQuantile } from "./normal.ts";
import { whereFalls } from "./score-search.ts";
import { studentTQuantile } from "./student-t.ts";
import { requireTwoGroups, type TwoGroups } from "./two-by-two.ts";

/** Names of the intervals of {@link riskDifference}, the default first. */
export const RISK_DIFFERENCE_METHODS = ["zou-donner", "newcombe", "miettinen-nurminen", "mee"] as const;

/** Name of an interval for a difference of two proportions. */
export type RiskDifferenceMethod = (typeof RISK_DIFFERENCE_METHODS)[number];

/** The difference of two proportions with its interval, each from -1 to 1. */
export interface RiskDifference {
  /** `x1 / n1 - x2 / n2`. */
  readonly difference: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
  readonly method: RiskDifferenceMethod;
}

/** What may be chosen for a {@link riskDifference}. */
export interface RiskDifferenceOptions {
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
  /** `zou-donner` when left out. */
  readonly method?: RiskDifferenceMethod;
}

/**
 * Difference of the proportions affected in two independent groups, with its interval.
 *
 * - `zou-donner` (default): the Clopper-Pearson limits of both groups joined by their squares; the limit away from 0 no nearer
 *   than that of Agresti & Caffo with t in place of z, a choice that was measured (docs/statistics.md): without it too near
 *   where one side has nearly none and the other nearly all. Zou & Donner 2008, Stat Med 27:1693-1702; Agresti & Caffo 2000,
 *   Am Stat 54:280-288 (both from memory).
 * - `newcombe`: Wilson's limits joined so, right on average and too narrow for some shares. Newcombe 1998, Stat Med 17:873-890, method 10.
 * - `miettinen-nurminen`: score interval with variance times N / (N - 1). Miettinen & Nurminen 1985,
 *   Stat Med 4:213-226.
 * - `mee`: the same without that factor. Mee 1984, Biometrics 40:1175-1176.
 *
 * @throws RangeError when a count or the level is out of its range or the method is none of the four.
 */
export function riskDifference(
  groups: TwoGroups,
  { level = 0.95, method = "zou-donner" }: RiskDifferenceOptions = {},
): RiskDifference {
  requireTwoGroups(groups);
  requireLevel(level);
  if (!RISK_DIFFERENCE_METHODS.includes(method)) {
    throw new RangeError(`method must be one of ${RISK_DIFFERENCE_METHODS.join(", ")}, got ${method}`);
  }
  const { x1, n1, x2, n2 } = groups;
  const difference = (x1 * n2 - x2 * n1) / (n1 * n2);
  const limitsBy: Record<RiskDifferenceMethod, () => Limits> = {
    "zou-donner": () =>
      notNearer(
        joinedLimits(groups, difference, (x, n) => binomialInterval(x, n, { level })),
        addedLimits(groups, 1 - level),
        difference,
      ),
    newcombe: () => joinedLimits(groups, difference, (x, n) => wilsonLimits(x, n, 1 - level)),
    "miettinen-nurminen": () => scoreLimits(groups, difference, 1 - level, (n1 + n2) / (n1 + n2 - 1)),
    mee: () => scoreLimits(groups, difference, 1 - level, 1),
  };
  return { difference, ...limitsBy[method](), level, method };
}

interface Limits {
  readonly lower: number;
  readonly upper: number;
}

function joinedLimits(
  { x1, n1, x2, n2 }: TwoGroups,
  difference: number,
  single: (x: number, n: number) => Limits,
): Limits {
  const first = single(x1, n1);
  const second = single(x2, n2);
  const p1 = x1 / n1;
  const p2 = x2 / n2;
  return {
    lower: Math.max(-1, difference - Math.hypot(p1 - first.lower, second.upper - p2)),
    upper: Math.min(1, difference + Math.hypot(first.upper - p1, p2 - second.lower)),
  };
}

/** Wald's limits after one affected and one free were added to each side, by Agresti & Caffo; with t in place of their z. */
function addedLimits({ x1, n1, x2, n2 }: TwoGroups, alpha: number): Limits {
  const [p1, p2] = [(x1 + 1) / (n1 + 2), (x2 + 1) / (n2 + 2)];
  const error = Math.sqrt((p1 * (1 - p1)) / (n1 + 2) + (p2 * (1 - p2)) / (n2 + 2));
  const margin = studentTQuantile(alpha / 2, Math.max(1, n1 + n2 - 2), "upper") * error;
  return { lower: Math.max(-1, p1 - p2 - margin), upper: Math.min(1, p1 - p2 + margin) };
}

/** The limit towards 0 stays, so that an interval holds 0 as before, and as that of the risk ratio holds 1. */
const notNearer = ({ lower, upper }: Limits, other: Limits, difference: number): Limits => ({
  lower: difference <= 0 ? Math.min(lower, other.lower) : lower,
  upper: difference >= 0 ? Math.max(upper, other.upper) : upper,
});

function scoreLimits(groups: TwoGroups, difference: number, alpha: number, factor: number): Limits {
  const z = normalQuantile(alpha / 2, "upper");
  const statistic = (delta: number): number => score(groups, difference, delta, factor);
  return {
    lower: difference === -1 ? -1 : whereFalls(statistic, z, -1, difference),
    upper: difference === 1 ? 1 : whereFalls(statistic, -z, difference, 1),
  };
}

/** `(d - delta) / √V`, V at the most likely proportions that differ by delta. */
function score(groups: TwoGroups, difference: number, delta: number, factor: number): number {
  const gap = difference - delta;
  if (gap === 0) return 0;
  const { p1, q1, p2, q2 } = likeliest(groups, delta);
  return gap / Math.sqrt(factor * ((p1 * q1) / groups.n1 + (p2 * q2) / groups.n2));
}

/**
 * The most likely proportions with `p1 - p2 = delta`, with their complements. The likelihood has one maximum
 * over the part u that both share, from 0 to 1 - |delta|; its slope falls, so it is found by halving.
 */
function likeliest({ x1, n1, x2, n2 }: TwoGroups, delta: number) {
  const room = 1 - Math.abs(delta);
  const more1 = Math.max(0, delta);
  const more2 = Math.max(0, -delta);
  const at = (u: number) => ({ p1: u + more1, q1: room - u + more2, p2: u + more2, q2: room - u + more1 });
  const part = (count: number, share: number): number => (count === 0 ? 0 : count / share);
  const slope = (u: number): number => {
    const { p1, q1, p2, q2 } = at(u);
    return part(x1, p1) - part(n1 - x1, q1) + part(x2, p2) - part(n2 - x2, q2);
  };
  return at(whereFalls(slope, 0, 0, room));
}
