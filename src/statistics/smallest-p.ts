import { requireWhole } from "./checks.ts";
import { seededRandom } from "./random.ts";

/** Which units may change places: a label for each, and the stratum within which labels are dealt out anew. */
export interface Permutable {
  /** Whole numbers from 0, such as the place of the visit. */
  readonly labels: readonly number[];
  readonly strata: readonly string[];
}

/** What may be chosen for {@link smallestPAdjusted}. */
export interface PermutationOptions {
  /** 99 to 99 999; 4999 when left out. */
  readonly permutations?: number;
  /** 1 when left out. */
  readonly seed?: number;
}

/** Statistics that differ by less than this part of one are equal. */
const TIE = 1e9;

/**
 * P values of several comparisons of the same animals, adjusted for their number by the distribution of the smallest of
 * them: labels are dealt out anew within strata, all comparisons are made again each time, and it is counted how often
 * the smallest p of those still in question is as small as the one observed (step-down). Comparisons that say the same
 * count as one, because they move together; holds for any dependence, where labels could have fallen either way.
 *
 * @param statistics for labels as dealt, one number a comparison, larger when further from no difference; p values of a
 *   comparison are ranks among its own, so that they need not be alike.
 * @returns in the order of the statistics; never below 1 / (permutations + 1), and the same for the same seed.
 *
 * Source: Westfall & Young 1993, Resampling-based multiple testing, algorithm 2.8; with ranks Ge, Dudoit & Speed 2003,
 * Test 12:1-77 (both from memory).
 */
export function smallestPAdjusted(
  units: Permutable,
  statistics: (labels: readonly number[]) => readonly number[],
  { permutations = 4999, seed = 1 }: PermutationOptions = {},
): number[] {
  const turns = dealtAnew(units, { permutations, seed });
  const observed = statistics(units.labels).map(tied);
  const rows = observed.map((value) => {
    const row = new Float64Array(permutations + 1);
    row[0] = value;
    return row;
  });
  let turn = 0;
  for (const dealt of turns) {
    turn += 1;
    for (const [place, value] of statistics(dealt).entries()) {
      const row = rows[place];
      if (row !== undefined) row[turn] = tied(value);
    }
  }
  return stepDown(rows.map(ranks));
}

/**
 * Labels dealt out anew within strata, as often as is asked for: the same array each time, in another order.
 * @throws RangeError when permutations or seed are out of their range, or labels and strata are not as many.
 */
export function* dealtAnew(
  { labels, strata }: Permutable,
  { permutations = 4999, seed = 1 }: PermutationOptions,
): Generator<readonly number[]> {
  requireWhole("permutations", permutations, 99, 99_999);
  if (labels.length !== strata.length) throw new RangeError("labels and strata must be as many");
  const dealt = [...labels];
  const places = [...new Set(strata)].map((own) => [...strata.keys()].filter((unit) => strata[unit] === own));
  const random = seededRandom(seed);
  for (let turn = 1; turn <= permutations; turn++) {
    for (const some of places) shuffle(dealt, some, random.below);
    yield dealt;
  }
}

/** Whole numbers, in which statistics that differ by rounding are equal. */
export const tied = (value: number): number => Math.round(value * TIE);

/** Fisher & Yates within the places of one stratum. */
function shuffle(values: number[], places: readonly number[], below: (bound: number) => number): void {
  for (let i = places.length - 1; i > 0; i--) {
    const one = places[i] ?? 0;
    const other = places[below(i + 1)] ?? 0;
    const kept = values[one] ?? 0;
    values[one] = values[other] ?? 0;
    values[other] = kept;
  }
}

/** Each statistic as the share of all that are as large. */
function ranks(row: Float64Array): Float64Array {
  const sorted = row.slice().sort();
  return row.map((value) => {
    let low = 0;
    let high = sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((sorted[middle] ?? 0) < value) low = middle + 1;
      else high = middle;
    }
    return (sorted.length - low) / sorted.length;
  });
}

/** @param rows p of each comparison, observed first and then turn by turn; gives up its numbers */
function stepDown(rows: readonly Float64Array[]): number[] {
  const order = [...rows.keys()].sort((a, b) => (rows[a]?.[0] ?? 1) - (rows[b]?.[0] ?? 1));
  const adjusted = new Array<number>(rows.length).fill(1);
  const smallest = new Float64Array(rows[0]?.length ?? 0).fill(1);
  for (const place of order.toReversed()) {
    const own = rows[place] ?? smallest;
    let reached = 0;
    for (const [turn, p] of own.entries()) {
      const least = Math.min(smallest[turn] ?? 1, p);
      smallest[turn] = least;
      if (least <= (own[0] ?? 1)) reached += 1;
    }
    adjusted[place] = reached / own.length;
  }
  let largest = 0;
  for (const place of order) {
    largest = Math.max(largest, adjusted[place] ?? 1);
    adjusted[place] = largest;
  }
  return adjusted;
}
