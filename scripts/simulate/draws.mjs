// Random pigs, the same for the same seed.
import { keeps } from "./table.mjs";

/** How many times as many new runs decide a state that lies outside. */
const AGAIN = 8;

/**
 * How often what is printed holds or is claimed. A state that lies outside its limit after `runs` is run again more often,
 * and those new runs count alone, so that chance is not taken for a fault, nor picked out.
 *
 * @param once whether it holds (`coverage`) or is claimed (`error`), null where there is none
 */
export function measured(runs, once) {
  const run = (turns) => {
    const found = {};
    for (let turn = 0; turn < turns; turn++)
      for (const [kind, right] of Object.entries(once(turn))) {
        found[kind] ??= { right: 0, runs: 0 };
        if (right === null) continue;
        found[kind].runs += 1;
        if (right) found[kind].right += 1;
      }
    return Object.entries(found)
      .filter(([, one]) => one.runs > turns / 20)
      .map(([kind, one]) => ({ kind, worst: one.right / one.runs, runs: one.runs }));
  };
  const first = run(runs);
  return first.every(keeps) ? first : run(AGAIN * runs);
}

/** @param s carcase/statistics @param seed whole number */
export function draws(s, seed) {
  const { bits } = s.seededRandom(seed);
  const share = () => (bits() + 0.5) / 2 ** 32;
  const normal = () => Math.sqrt(-2 * Math.log(share())) * Math.cos(2 * Math.PI * share());
  /** Marsaglia & Tsang 2000, from memory. */
  const gamma = (shape) => {
    if (shape < 1) return gamma(shape + 1) * share() ** (1 / shape);
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const v = (1 + c * x) ** 3;
      if (v > 0 && Math.log(share()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  /** The share of one pen: mean p, correlation rho between its pigs (beta). */
  const penShare = (p, rho) => {
    if (rho === 0) return p;
    const [a, b] = [gamma((p * (1 - rho)) / rho), gamma(((1 - p) * (1 - rho)) / rho)];
    return a + b === 0 ? (share() < p ? 1 : 0) : a / (a + b);
  };
  const yes = (p) => share() < p;
  /** A place in a list of probabilities. */
  const pick = (probabilities) => {
    let left = share();
    const found = probabilities.findIndex((p) => {
      left -= p;
      return left < 0;
    });
    return found < 0 ? probabilities.length - 1 : found;
  };
  const count = (n, p) => Array.from({ length: n }, () => yes(p)).filter(Boolean).length;
  return { share, normal, penShare, yes, pick, count };
}

/** Binomial probabilities of 0 to n, by logarithms. */
export function binomial(n, p) {
  if (p === 0 || p === 1) return Array.from({ length: n + 1 }, (_, x) => (x === n * p ? 1 : 0));
  let log = n * Math.log1p(-p);
  const found = [Math.exp(log)];
  for (let x = 0; x < n; x++) {
    log += Math.log(((n - x) / (x + 1)) * (p / (1 - p)));
    found.push(Math.exp(log));
  }
  return found;
}

/** Probabilities of x among n drawn from N with D, x from 0 to n. */
export function hypergeometric(s, n, D, N) {
  return Array.from({ length: n + 1 }, (_, x) =>
    x > D || n - x > N - D ? 0 : s.hypergeometricProbability(x, { population: N, affected: D, drawn: n }),
  );
}

/** Least, mean and greatest of shares with where they were met. */
export function tally() {
  const states = [];
  return {
    /** What was {@link measured} of this kind. */
    addOf: (kind, at, found) => {
      for (const one of found) if (one.kind === kind) states.push({ at, value: one.worst, runs: one.runs });
    },
    add: (at, value, runs) => states.push({ at, value, runs }),
    row: (about) => {
      const error = about.kind === "error";
      const sorted = [...states].sort((a, b) => (error ? b.value - a.value : a.value - b.value));
      const [worst] = sorted;
      const mean = states.reduce((sum, { value }) => sum + value, 0) / states.length;
      return {
        ...about,
        states: states.length,
        // Of the worst state: where limits are often missing it may have fewer than others.
        runs: worst.runs ?? null,
        worst: rounded(worst.value),
        worst_at: worst.at,
        mean: rounded(mean),
        most: rounded(sorted.at(-1).value),
      };
    },
  };
}

const rounded = (value) => Number(value.toFixed(4));
export const grid = (from, to, step) =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => Number((from + i * step).toFixed(4)));
