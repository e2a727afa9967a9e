/** Values at places in order, such as the days of visits or the arms of a trial: do they rise or fall, and how steeply? */
import { degreesOfSum } from "./adjusted-shares.ts";
import { requireLevel, requireWhole } from "./checks.ts";
import { wilsonLimitsAt } from "./closed-form-limits.ts";
import { addedSums, farFromMean, type Sums } from "./conditional-sums.ts";
import { dealtSums } from "./dealt-sums.ts";
import { LARGEST_EXACT_RANKING } from "./rank-sum.ts";
import { rank } from "./ranks.ts";
import { dealtAnew, type PermutationOptions, tied } from "./smallest-p.ts";
import { studentTQuantile } from "./student-t.ts";

/** The values found at one place. */
export interface PlacedValues {
  /** On the axis, such as days since the first visit; a whole number from 0. */
  readonly place: number;
  /** One at least. */
  readonly values: readonly number[];
  /** Of how many animals, where the values are their shares, 0 to 1; not used by the test. */
  readonly animals?: number;
}

/** Test for a trend. */
export interface PermutedTrend {
  /** Above 0 when the values rise with the place; null when nothing can vary. */
  readonly z: number | null;
  /** Two-sided; 1 when nothing can vary. */
  readonly p: number;
  /** `exact`: all ways to deal the values out were counted; else so many at random as were asked for. */
  readonly method: "exact" | "permutations";
}

/** What may be chosen for a permuted trend. */
export interface PermutedTrendOptions extends PermutationOptions {
  /** Take the midranks of each stratum for the values, over its number of values and one (van Elteren's weights); false when left out. */
  readonly ranked?: boolean;
}

/** Values that are not whole are held in so many parts of their range. */
const PARTS = 1e9;
const LARGEST_PLACE = 1e7;

/**
 * Permutation test for a trend: `Σ place value`, when the values of each stratum could have fallen to its places in any
 * way. With `ranked` it is Cuzick's test for ordered scores, of two places Wilcoxon's (in strata van Elteren's); of 0 and
 * 1 it is the exact trend of Cochran & Armitage. Without, of the means of pens of two arms, it is Fisher's randomisation
 * of pens. Small ones are counted, larger ones dealt out at random by a seed.
 * Sources: Cuzick 1985, Stat Med 4:87-90 (from memory); Fisher 1935, The design of experiments (from memory).
 *
 * @param strata one at least, each of one place or more.
 * @throws RangeError when there is no stratum, a list is empty, or a place or value is out of its range.
 */
export function permutedTrend(
  strata: readonly (readonly PlacedValues[])[],
  { ranked = false, permutations = 9999, seed = 1 }: PermutedTrendOptions = {},
): PermutedTrend {
  check(strata);
  const taken = ranked ? strata.map((stratum) => midranks(stratum, strata.length)) : strata;
  const { products, variance } = deviations(taken);
  if (variance === 0) return { z: null, p: 1, method: "exact" };
  const z = products / Math.sqrt(variance);
  const exactP = exactTrendP(taken);
  if (exactP !== null) return { z, p: exactP, method: "exact" };
  const units = taken.flatMap((stratum, own) =>
    stratum.flatMap(({ place, values }) => values.map((value) => ({ place, value, stratum: String(own) }))),
  );
  const middle = units.reduce((sum, { place, value }) => sum + place * value, 0) - products;
  const values = Float64Array.from(units, ({ value }) => value);
  const far = (dealt: readonly number[]): number => {
    let sum = 0;
    for (let unit = 0; unit < values.length; unit++) sum += (dealt[unit] ?? 0) * (values[unit] ?? 0);
    return tied(Math.abs(sum - middle) / Math.sqrt(variance));
  };
  const labels = units.map(({ place }) => place);
  const observed = far(labels);
  let reached = 1;
  const dealing = { labels, strata: units.map(({ stratum }) => stratum) };
  for (const dealt of dealtAnew(dealing, { permutations, seed })) if (far(dealt) >= observed) reached += 1;
  const p = reached / (permutations + 1);
  return { z, p, method: "permutations" };
}

/** How steeply values rise. */
export interface Slope {
  /** By one step of the place; of two arms at 0 and 1 the difference of their means. Null when all lie at one place. */
  readonly slope: number | null;
  /** Null where there are too few values, or where nothing varies within the places. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** Degrees of freedom of its t; 0 where there are too few values for one. */
  readonly df: number;
  /** Limits by the values' spread, or Wilson's of shares joined as Newcombe joins two. */
  readonly method: "t" | "newcombe";
}

/**
 * Least squares slope of the values over their places, each stratum about its own mean. Each place has a variance of its own, taken
 * within strata: the treated often vary less than the control, and one variance for both held the truth in 75 of 100
 * (docs/statistics.md). Limits by Student's t with the degrees of freedom of the place with the fewest; of one stratum and two places
 * it is Welch's difference of two means. Where a place has one value in every stratum, as in pairs, the variance is that about
 * the line (of pairs, the paired t). Sources: Welch 1938, Biometrika 29:350-362; regression with fixed effects of strata, textbook (both
 * from memory).
 *
 * Shares of animals lie askew near 0 and 1, where those limits held the truth in as few as 87 of 100: with `animals` they are
 * Wilson's of each place, joined ({@link joinedLimits}). Of several strata with the degrees of freedom of the place with the fewest, too:
 * with those of all places together they held it in 92.75 of 100 where the strata are filled unlike.
 *
 * @throws RangeError as {@link permutedTrend}.
 */
export function slopeWithin(
  strata: readonly (readonly PlacedValues[])[],
  { level = 0.95 }: { readonly level?: number } = {},
): Slope {
  check(strata);
  requireLevel(level);
  const { products, spreadOfPlaces, spreadOfValues, count } = deviations(strata);
  if (spreadOfPlaces === 0) return { slope: null, lower: null, upper: null, df: 0, method: "t" };
  const slope = products / spreadOfPlaces;
  const places = perPlace(strata);
  const fewest = Math.min(...places.map(({ df }) => df));
  const df = fewest > 0 ? fewest : count - strata.length - 1;
  if (df < 1) return { slope, lower: null, upper: null, df: 0, method: "t" };
  const variance =
    fewest > 0
      ? places.reduce((sum, place) => sum + partOf(place), 0) / spreadOfPlaces ** 2
      : (spreadOfValues - slope * products) / df / spreadOfPlaces;
  if (places.every(({ animals }) => animals > 0)) {
    const own = fewest > 0 ? places : acrossStrata(places, Math.max(0, variance) * spreadOfPlaces ** 2);
    const joined = joinedLimits(own, level, fewest > 0 && strata.length === 1 ? null : df);
    const [lower, upper] = [slope - joined.below / spreadOfPlaces, slope + joined.above / spreadOfPlaces];
    return { slope, lower, upper, df: joined.df, method: "newcombe" };
  }
  if (!(variance * spreadOfPlaces > 1e-12 * spreadOfValues))
    return { slope, lower: null, upper: null, df, method: "t" };
  const error = studentTQuantile((1 - level) / 2, df, "upper") * Math.sqrt(variance);
  return { slope, lower: slope - error, upper: slope + error, df, method: "t" };
}

/** The values of one place over all strata. */
interface Placed {
  readonly values: readonly number[];
  readonly df: number;
  /** About their mean in each stratum. */
  readonly squares: number;
  /** Of the distances from the middle of the strata, and their sum with its sign and without. */
  readonly weight: number;
  readonly pull: number;
  readonly reach: number;
  /** Values times distances without sign: over `reach` the share that the slope takes of this place. */
  readonly reached: number;
  readonly animals: number;
}

function perPlace(strata: readonly (readonly PlacedValues[])[]): Placed[] {
  const found = new Map<number, Placed>();
  for (const stratum of strata) {
    const count = stratum.reduce((sum, { values }) => sum + values.length, 0);
    const middle = stratum.reduce((sum, { place, values }) => sum + place * values.length, 0) / count;
    for (const { place, values, animals = 0 } of stratum) {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      const pull = values.length * (place - middle);
      const own = found.get(place);
      found.set(place, {
        values: [...(own?.values ?? []), ...values],
        df: (own?.df ?? 0) + values.length - 1,
        squares: (own?.squares ?? 0) + squaresOf(values),
        weight: (own?.weight ?? 0) + values.length * (place - middle) ** 2,
        pull: (own?.pull ?? 0) + pull,
        reach: (own?.reach ?? 0) + Math.abs(pull),
        reached: (own?.reached ?? 0) + Math.abs(pull) * mean,
        animals: (own?.animals ?? 0) + animals,
      });
    }
  }
  return [...found.values()];
}

/** What a place adds to the variance of the slope, times the square of the spread of the places. */
const partOf = ({ weight, squares, df }: Placed): number => (df > 0 ? (weight * squares) / df : 0);

/** Of pairs the places over all strata, varying together as much as the values vary about the line. */
function acrossStrata(places: readonly Placed[], variance: number): Placed[] {
  const wide = places.map((place) => ({
    ...place,
    squares: squaresOf(place.values),
    df: place.values.length - 1,
  }));
  const all = wide.reduce((sum, place) => sum + partOf(place), 0);
  return wide.map((place) => ({ ...place, squares: all > 0 ? (place.squares * variance) / all : 0 }));
}

function squaresOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

/**
 * How far the limits of a sum of shares, each times its `pull`, lie below and above it: Wilson's limits of each share with its
 * effective number of animals, by Student's t, joined as Newcombe joins two. The effective number is that of animals drawn singly
 * whose share would vary as much, not above the animals; where the values of a place do not vary, each counts as one animal.
 * Sources: Newcombe 1998, Stat Med 17:873-890, method 10; of more than two shares Zou, Huang & Zhang 2009, Comput Stat Data
 * Anal 53:1080-1085; effective number: Korn & Graubard 1998, Surv Methodol 24:193-201 (these two from memory).
 *
 * @param only degrees of freedom; null for those of the places together (Satterthwaite)
 */
function joinedLimits(places: readonly Placed[], level: number, only: number | null) {
  const shares = places
    .filter(({ reach }) => reach > 0)
    .map((place) => {
      const { values, df, squares, pull, reach, reached, animals } = place;
      const share = Math.min(1, reached / reach);
      const variance = partOf(place) / reach ** 2;
      const n = squares > 1e-12 ? Math.min(animals, (share * (1 - share)) / variance) : values.length;
      // With half an animal more of either kind, so that none affected is not taken for none that vary.
      const inner = (share * n + 0.5) / (n + 1);
      return { share, n, df, pull, reach, part: (reach ** 2 * inner * (1 - inner)) / n };
    });
  const df = only ?? degreesOfSum(shares);
  const t = studentTQuantile((1 - level) / 2, df, "upper");
  let [below, above] = [0, 0];
  for (const { share, n, pull, reach } of shares) {
    const limits = wilsonLimitsAt(share * n, n, t);
    const [down, up] = [reach * (share - limits.lower), reach * (limits.upper - share)];
    below = Math.hypot(below, pull < 0 ? up : down);
    above = Math.hypot(above, pull < 0 ? down : up);
  }
  return { below, above, df };
}

function check(strata: readonly (readonly PlacedValues[])[]): void {
  if (strata.length === 0) throw new RangeError("at least one stratum is needed");
  for (const stratum of strata) {
    rank(stratum.map(({ values }) => values));
    for (const { place } of stratum) requireWhole("place", place, 0, LARGEST_PLACE);
  }
}

/** Whole numbers where there is one stratum, so that equal sums are found equal. */
function midranks(stratum: readonly PlacedValues[], strata: number): PlacedValues[] {
  const { doubled, total } = rank(stratum.map(({ values }) => values));
  const over = strata === 1 ? 1 : total + 1;
  return stratum.map(({ place }, at) => ({ place, values: (doubled[at] ?? []).map((one) => one / over) }));
}

/** Sums of squares and products about the means of each stratum, and what they say of a permuted `Σ place value`. */
function deviations(strata: readonly (readonly PlacedValues[])[]) {
  const all = { products: 0, spreadOfPlaces: 0, spreadOfValues: 0, variance: 0, count: 0 };
  for (const stratum of strata) {
    const count = stratum.reduce((sum, { values }) => sum + values.length, 0);
    const sum = (of: (place: number, value: number) => number): number =>
      stratum.reduce(
        (total, { place, values }) => values.reduce((part, one) => part + of(place, one), total),
        0,
      );
    const [middle, mean] = [sum((place) => place) / count, sum((_, value) => value) / count];
    const places = sum((place) => (place - middle) ** 2);
    // Equal values must not vary by the rounding of their mean.
    const alike = new Set(stratum.flatMap((one) => one.values)).size < 2;
    const values = alike ? 0 : sum((_, value) => (value - mean) ** 2);
    all.products += sum((place, value) => (place - middle) * (value - mean));
    all.spreadOfPlaces += places;
    all.spreadOfValues += values;
    all.variance += count < 2 ? 0 : (places * values) / (count - 1);
    all.count += count;
  }
  return all;
}

/** `null` when there are too many ways, or over 100 values in a stratum. */
function exactTrendP(strata: readonly (readonly PlacedValues[])[]): number | null {
  const whole = wholeValues(strata.flatMap((stratum) => stratum.flatMap(({ values }) => values)));
  const farthest = Math.max(...strata.flatMap((stratum) => stratum.map(({ place }) => place)));
  let sums: Sums | null = new Map([[0, 1]]);
  let [observed, count] = [0, 0];
  for (const stratum of strata) {
    const held = stratum.map(({ place, values }) => ({ place, values: values.map(whole.of) }));
    observed += held.reduce((sum, { place, values }) => sum + place * values.reduce((a, b) => a + b, 0), 0);
    count += held.flatMap(({ values }) => values).length;
    sums = addedSums(sums, sumsOf(held));
    if (sums === null) return null;
  }
  // Half a part may be lost of each value, in the sum and in the mean.
  return farFromMean(sums, observed, whole.rounded ? count * farthest : 0);
}

function sumsOf(stratum: readonly PlacedValues[]): Sums | null {
  const values = stratum.flatMap((one) => one.values);
  if (values.length > LARGEST_EXACT_RANKING) return null;
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const dealt = dealtSums(
    [...counts].map(([value, count]) => ({ value, count })),
    stratum.map((one) => one.values.length),
    [stratum.map(({ place }) => place)],
  );
  if (dealt === null) return null;
  const all = dealt.reduce((sum, { ways }) => sum + ways, 0);
  return new Map(dealt.map(({ sums: [sum = 0], ways }) => [sum, ways / all]));
}

/** Values as whole numbers from 0: as they are where all are whole, else in parts of their range. */
function wholeValues(values: readonly number[]): { of: (value: number) => number; rounded: boolean } {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return values.every(Number.isSafeInteger) && most - least < PARTS
    ? { of: (value) => value - least, rounded: false }
    : { of: (value) => Math.round(((value - least) / (most - least)) * PARTS), rounded: true };
}
