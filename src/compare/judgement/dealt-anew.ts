/** All comparisons of a block made again with the sides dealt out anew, to allow for how many they are. */
import type { Case } from "../../cases/index.ts";
import { smallestPAdjusted } from "../../statistics/index.ts";
import { grouped } from "../../words/grouped.ts";
import type { Asked, Comparison } from "../comparison.ts";
import type { ComparedSides } from "../sides/comparability.ts";
import { facets } from "../sides/facets.ts";
import { type Answered, valuesOf } from "../sides/outcomes.ts";
import { sharedBy } from "../sides/pens.ts";
import { meanOf } from "./by-pens.ts";
import type { Result } from "./results.ts";
import { placesOf } from "./tests.ts";

/** How often the sides are dealt out. */
export const permutations = 9999;

/** A comparison of which something may be claimed. */
export interface Claimable extends Pick<Comparison, "claim_on"> {
  readonly compared: ComparedSides;
  readonly test: Result["test"];
}

/** What a comparison counts of one pig or pen, in its own stratum. */
interface Item {
  readonly unit: number;
  readonly value: number;
}

/**
 * P of each comparison adjusted for all of them, by the smallest p when visits (or groups) are dealt out anew within
 * strata; where any of them rests on pens, whole pens are dealt out.
 */
export function adjustedTogether(all: readonly Claimable[], asked: Asked): number[] {
  const places = placesOfAll(all);
  const byPen = all.some(({ claim_on }) => claim_on === "pens" || claim_on === "pens-in-strata");
  const keyOf = (one: Case): string | Case => (byPen ? (sharedBy(one, asked) ?? one) : one);
  const by = [...new Set(all.flatMap(({ compared }) => compared.stratification?.by ?? []))];
  const pigs = new Map<Case, number>();
  for (const { compared } of all)
    for (const { side, answers } of compared.sides)
      for (const { one } of answers) pigs.set(one, places.get(side.side)?.label ?? 0);
  const units = [...grouped(pigs.keys(), keyOf)];
  const unitOf = new Map(units.map(([key], unit) => [key, unit]));
  const labels = units.map(([, [first]]) => pigs.get(first) ?? 0);
  const strata = units.map(([, some]) =>
    JSON.stringify(
      [...new Set(some.map((one) => JSON.stringify(by.map((facet) => facets[facet](one)))))].sort(),
    ),
  );
  const read = all.map((one) => statisticOf(one, (pig) => unitOf.get(keyOf(pig)) ?? 0, [...places.values()]));
  return smallestPAdjusted({ labels, strata }, (dealt) => read.map((statistic) => statistic(dealt)), {
    permutations,
    seed: asked.seed,
  });
}

interface Place {
  readonly label: number;
  /** On the axis of time. */
  readonly at: number;
}

/** The sides of all comparisons; not every one has read pigs on each. */
function placesOfAll(all: readonly Claimable[]): ReadonlyMap<string, Place> {
  const sides = [
    ...new Map(all.flatMap(({ compared }) => compared.sides.map((one) => [one.side.side, one]))).values(),
  ];
  const { places } = placesOf(sides);
  return new Map(sides.map(({ side }, label) => [side.side, { label, at: places[label] ?? label }]));
}

/** How far a comparison lies from no difference, for any labels; zero where nothing can vary. */
function statisticOf(
  { compared, claim_on, test }: Claimable,
  unitOf: (one: Case) => number,
  places: readonly Place[],
): (labels: readonly number[]) => number {
  const pens = claim_on === "pens" || claim_on === "pens-in-strata";
  const trend = test === "cochran-armitage" || test === "cuzick";
  const means = pens && (trend || test === "unit-means");
  const ranked = !means && (test === "mann-whitney" || test === "cuzick" || test === "kruskal-wallis");
  const within =
    compared.stratification === null || claim_on === "pigs"
      ? [compared.sides.map(({ answers }) => answers)]
      : compared.stratification.strata;
  const strata = within.map((stratum) => {
    const answers = stratum.flat();
    const parts = pens
      ? [...grouped(answers, ({ one }) => unitOf(one)).values()]
      : answers.map((one) => [one]);
    if (means) return parts.map((part) => ({ unit: unitAt(part, unitOf), value: meanOf(part) }));
    return ranked ? rankedItems(parts, unitOf) : excessItems(parts, unitOf);
  });
  if (test === "freeman-halton" || test === "kruskal-wallis")
    return (labels) => strata.reduce((sum, items) => sum + anyDifference(items, labels), 0);
  const at = places.map((place) => (trend ? place.at : place.label));
  return (labels) => {
    let [sum, variance] = [0, 0];
    for (const items of strata) {
      const part = linear(items, labels, at);
      sum += part.sum;
      variance += part.variance;
    }
    return variance > 1e-12 ? Math.abs(sum) / Math.sqrt(variance) : 0;
  };
}

type UnitOf = (one: Case) => number;

const unitAt = ([first]: readonly Answered[], unitOf: UnitOf): number =>
  first === undefined ? 0 : unitOf(first.one);

/** Affected less those to be expected of so many pigs. */
function excessItems(parts: readonly (readonly Answered[])[], unitOf: UnitOf): Item[] {
  const values = valuesOf(parts.flat());
  const share = values.reduce((sum, value) => sum + value, 0) / values.length;
  return parts.map((part) => ({
    unit: unitAt(part, unitOf),
    value: valuesOf(part).reduce((sum, value) => sum + value - share, 0),
  }));
}

/** Mid-ranks of the scores, or of the means of pens, each stratum weighted as by van Elteren. */
function rankedItems(parts: readonly (readonly Answered[])[], unitOf: UnitOf): Item[] {
  const means = parts.map(meanOf);
  const ranks = means.map((mean) =>
    means.reduce((sum, other) => sum + (other < mean ? 1 : other === mean ? 0.5 : 0), 0.5),
  );
  return parts.map((part, place) => ({
    unit: unitAt(part, unitOf),
    value: (ranks[place] ?? 0) / (parts.length + 1),
  }));
}

function linear(items: readonly Item[], labels: readonly number[], at: readonly number[]) {
  const place = ({ unit }: Item): number => at[labels[unit] ?? 0] ?? 0;
  let [sumV, sumP] = [0, 0];
  for (const item of items) {
    sumV += item.value;
    sumP += place(item);
  }
  const [middleV, middleP] = [sumV / items.length, sumP / items.length];
  let [sum, squaresV, squaresP] = [0, 0, 0];
  for (const item of items) {
    const [v, p] = [item.value - middleV, place(item) - middleP];
    sum += v * p;
    squaresV += v * v;
    squaresP += p * p;
  }
  return { sum, variance: items.length < 2 ? 0 : (squaresV * squaresP) / (items.length - 1) };
}

/** Kruskal & Wallis's H of the values as they are; of affected or not it is Pearson's chi-squared, times (N - 1) / N. */
function anyDifference(items: readonly Item[], labels: readonly number[]): number {
  const middle = items.reduce((sum, { value }) => sum + value, 0) / items.length;
  const squares = items.reduce((sum, { value }) => sum + (value - middle) ** 2, 0);
  if (squares < 1e-12) return 0;
  const sides = grouped(items, ({ unit }) => labels[unit]);
  let between = 0;
  for (const some of sides.values())
    between += some.reduce((sum, { value }) => sum + value - middle, 0) ** 2 / some.length;
  return (between * (items.length - 1)) / squares;
}
