/** A probability and its complement, each kept to full relative accuracy (1 - 1e-20 has a `q`). */
export interface Split {
  readonly p: number;
  readonly q: number;
}

/** The probability whose log-odds `ln(p / q)` is given. */
export function fromLogOdds(logOdds: number): Split {
  if (logOdds > 0) {
    const q = 1 / (1 + Math.exp(logOdds));
    return { p: 1 - q, q };
  }
  const p = 1 / (1 + Math.exp(-logOdds));
  return { p, q: 1 - p };
}

/** Split a number from 0 to 1 (the complement is exact down to one half, and rounded below). */
export function splitOf(p: number): Split {
  return { p, q: 1 - p };
}

/** Exchange a probability and its complement: turns a limit for healthy animals into one for affected. */
export function reflect(split: Split): Split {
  return { p: split.q, q: split.p };
}

/** Value and slope of a function of the log-odds. */
export interface Slope {
  readonly value: number;
  readonly slope: number;
}

/**
 * Root of a function that is at or below 0 at `low` and at or above 0 at `high` (log-odds, finite):
 * Newton steps, replaced by halving whenever a step would leave the bracket or fails to halve it.
 * Returns log-odds to the last few bits.
 */
export function solveLogOdds(f: (logOdds: number) => Slope, low: number, high: number): number {
  let left = low;
  let right = high;
  let at = (left + right) / 2;
  let width = right - left;
  for (let i = 0; i < 200; i++) {
    const { value, slope } = f(at);
    if (value === 0) return at;
    if (value < 0) left = at;
    else right = at;
    const step = value / slope;
    const newton = at - step;
    const stuck = i % 8 === 7 && right - left > width / 2;
    if (i % 8 === 7) width = right - left;
    const usable = slope > 0 && newton > left && newton < right && !stuck;
    const next = usable ? newton : (left + right) / 2;
    if (Math.abs(next - at) <= 2e-16 * Math.abs(at)) return next;
    at = next;
  }
  return at;
}
