/** How often a comparison of two visits shows a difference, when pigs are drawn as described and tested as compare tests them. */
import {
  binomialInterval,
  type ClusterCount,
  clusteredShares,
  mixedPower,
  rankSumShows,
  ruleFor,
  type SeededRandom,
  type SharesRule,
  seededRandom,
  stratifiedShares,
  type TwoGroups,
} from "../statistics/index.ts";

/** How often pigs are drawn anew. */
const runs = 2000;

/** Of a pig of a group on each visit: its chance of each value, from 0; they add up to 1. */
export interface GroupChances {
  readonly now: readonly number[];
  readonly later: readonly number[];
}

export interface Design {
  readonly groups: readonly GroupChances[];
  /** Whether values are grades; else 1 is affected and 0 is not. */
  readonly scored: boolean;
  /** 1: each pig comes from a pen of its own. */
  readonly fromEachPen: number;
  /** Of two pigs of one pen. */
  readonly correlation: number;
  readonly alpha: number;
  readonly rule: SharesRule;
  readonly seed: number;
}

/** Pens of each group on each visit; pigs, where each comes from a pen of its own. */
export interface Numbers {
  readonly now: readonly number[];
  readonly later: readonly number[];
}

export interface Power {
  readonly power: number;
  /** How often it was simulated, and between which limits the true power lies with 95 % confidence; null where it is exact. */
  readonly runs: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

type Pen = readonly number[];

export const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

/** Whether the groups have the same shares of both visits; compare then takes them together, else like against like. */
export const sameMix = ({ now, later }: Numbers): boolean =>
  now.every((one, group) => one * sumOf(later) === (later[group] ?? 0) * sumOf(now));

/** Exact where all tables can be counted, else simulated; the same for the same seed. */
export function powerOf(design: Design, numbers: Numbers): Power {
  if (!design.scored && design.fromEachPen === 1 && sameMix(numbers)) return exactPower(design, numbers);
  const shows = testOf(design, numbers);
  const seeds = seededRandom(design.seed);
  let shown = 0;
  for (let run = 0; run < runs; run++) {
    const { now, later } = drawn(design, numbers, seededRandom(seeds.bits()));
    if (shows(now, later)) shown += 1;
  }
  const { lower, upper } = binomialInterval(shown, runs);
  return { power: shown / runs, runs, lower, upper };
}

/** One pen of each group on each visit after the other, so that a larger number adds pens to those of a smaller one. */
function drawn(design: Design, numbers: Numbers, { bits }: SeededRandom) {
  const share = (): number => (bits() + 0.5) / 2 ** 32;
  const pens = { now: design.groups.map((): Pen[] => []), later: design.groups.map((): Pen[] => []) };
  for (let place = 0; place < Math.max(...numbers.now, ...numbers.later); place++)
    for (const [group, chances] of design.groups.entries())
      for (const visit of ["now", "later"] as const)
        if (place < (numbers[visit][group] ?? 0))
          pens[visit][group]?.push(onePen(chances[visit], design, share));
  return pens;
}

function exactPower({ groups, alpha, rule }: Design, { now, later }: Numbers): Power {
  const parts = groups.map((chances, group) => ({
    n1: now[group] ?? 0,
    n2: later[group] ?? 0,
    p1: chances.now[1] ?? 0,
    p2: chances.later[1] ?? 0,
  }));
  const power = mixedPower(parts, alpha, ruleFor(Math.max(sumOf(now), sumOf(later)), rule));
  return { power, runs: null, lower: null, upper: null };
}

/**
 * The values of the pigs of one pen, by Polya's urn: each pig after the first is like one of those before it with such a
 * probability that any two have the stated correlation; of yes and no this is the beta-binomial distribution.
 */
function onePen(chances: readonly number[], design: Design, share: () => number): Pen {
  const { fromEachPen, correlation } = design;
  const values: number[] = [];
  for (let before = 0; before < fromEachPen; before++) {
    const like = before * correlation;
    const copied = like > 0 && share() * (1 - correlation + like) < like;
    values.push(copied ? (values[Math.floor(share() * before)] ?? 0) : valueAt(chances, share()));
  }
  return values;
}

/** The value in whose part of all chances a share lies. */
function valueAt(chances: readonly number[], share: number): number {
  let left = share;
  const found = chances.findIndex((chance) => {
    left -= chance;
    return left < 0;
  });
  return found < 0 ? chances.findLastIndex((chance) => chance > 0) : found;
}

/** The test that compare makes of such visits, as whether it shows a difference. */
function testOf(
  design: Design,
  numbers: Numbers,
): (now: readonly Pen[][], later: readonly Pen[][]) => boolean {
  const { scored, fromEachPen, alpha, rule } = design;
  if (scored) {
    const valuesOf = (groups: readonly Pen[][]): number[] =>
      groups.flat().map((pen) => sumOf(pen) / pen.length);
    return (now, later) => rankSumShows(valuesOf(later), valuesOf(now), alpha);
  }
  const same = sameMix(numbers);
  if (fromEachPen > 1)
    return (now, later) => {
      const counts = [now, later].map((groups) => groups.map((pens) => pens.map(countOf)));
      const [first = [], second = []] = counts;
      const tables = first.map((pens, group) => tableOf(pens, second[group] ?? []));
      const { p } = clusteredShares([second.flat(), first.flat()], same ? {} : { strata: tables });
      return p < alpha;
    };
  // The same few tables come up again and again.
  const known = new Map<string, boolean>();
  return (now, later) => {
    const tables = now.map((pens, group) => tableOf(pens.map(countOf), (later[group] ?? []).map(countOf)));
    const key = tables.map(({ x1, x2 }) => `${x1} ${x2}`).join();
    const shown = known.get(key) ?? stratifiedShares(tables, { rule }).p < alpha;
    known.set(key, shown);
    return shown;
  };
}

const countOf = (pen: Pen): ClusterCount => ({ affected: sumOf(pen), examined: pen.length });

function tableOf(now: readonly ClusterCount[], later: readonly ClusterCount[]): TwoGroups {
  const total = (counts: readonly ClusterCount[], of: keyof ClusterCount): number =>
    sumOf(counts.map((count) => count[of]));
  return {
    x1: total(later, "affected"),
    n1: total(later, "examined"),
    x2: total(now, "affected"),
    n2: total(now, "examined"),
  };
}

/**
 * The smallest number that reaches a wanted power, sought from a guess; null when `most` does not. Of exact powers, which
 * have steps, the one from which it stays, checked over the next fifth of numbers.
 */
export function smallestNumber(
  at: (n: number) => Power,
  { guess, least, most, wanted }: Readonly<Record<"guess" | "least" | "most" | "wanted", number>>,
): number | null {
  const reaches = (n: number): boolean => at(n).power >= wanted;
  let low = least - 1;
  let found = Math.min(most, Math.max(least, guess));
  while (!reaches(found)) {
    if (found === most) return null;
    low = found;
    found = Math.min(most, Math.ceil(found * 1.2));
  }
  for (let next = Math.floor(found * 0.9); next > low; next = Math.floor(next * 0.9))
    if (reaches(next)) found = next;
    else low = next;
  while (found - low > 1) {
    const middle = Math.ceil((low + found) / 2);
    if (reaches(middle)) found = middle;
    else low = middle;
  }
  if (at(found).runs === null)
    for (let n = found + 1; n <= Math.min(most, found + Math.max(5, found / 5)); n++)
      if (!reaches(n)) found = n + 1;
  return found > most ? null : found;
}
