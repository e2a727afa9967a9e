/** All ways to deal values out to groups of fixed sizes, counted by a sum: what exact tests of several groups rest on. */

/** More intermediate states than this are not worked through. */
const MOST_STATES = 20_000;

/** Equal values, which are dealt out together. */
export interface TiedValues {
  readonly value: number;
  readonly count: number;
}

/** What the values dealt out add up to, and in how many of all ways. */
export interface DealtSums {
  readonly sums: readonly number[];
  readonly ways: number;
}

interface State {
  readonly sums: readonly number[];
  ways: number;
}

/** How far the values seen so far have filled the groups, and what they can add up to then. */
interface Filling {
  readonly filled: readonly number[];
  readonly states: Map<string | number, State>;
}

/**
 * Every outcome of dealing the values to the groups with the number of ways it can come about; `null` when that would take
 * too many steps. Tie by tie; states with the same filling and the same sums are put together.
 *
 * @param weights what is added up: for each sum, the weight of a value in each group.
 */
export function dealtSums(
  tied: readonly TiedValues[],
  sizes: readonly number[],
  weights: readonly (readonly number[])[],
): DealtSums[] | null {
  const empty = { sums: weights.map(() => 0), ways: 1 };
  let fillings: Filling[] = [{ filled: sizes.map(() => 0), states: new Map([["", empty]]) }];
  for (const { value, count } of tied) {
    const next = new Map<string, Filling>();
    let size = 0;
    for (const { filled, states } of fillings)
      for (const { counts, ways } of shares(count, sizes, filled)) {
        const to = fillingOf(
          next,
          filled.map((used, group) => used + (counts[group] ?? 0)),
        );
        const more = weights.map((own) => value * weighted(counts, own));
        size -= to.size;
        for (const state of states.values()) add(to, state, more, ways);
        size += to.size;
        if (size > MOST_STATES) return null;
      }
    fillings = [...next.values()];
  }
  return fillings.flatMap(({ states }) => [...states.values()]);
}

function fillingOf(all: Map<string, Filling>, filled: readonly number[]): Filling["states"] {
  const key = filled.join();
  const { states } = all.get(key) ?? { states: new Map() };
  all.set(key, { filled, states });
  return states;
}

function add(to: Filling["states"], { sums, ways }: State, more: readonly number[], times: number): void {
  const plus = (sum: number, place: number): number => sum + (more[place] ?? 0);
  const [first = 0] = sums;
  const key = sums.length === 1 ? plus(first, 0) : sums.map(plus).join();
  const known = to.get(key);
  if (known === undefined) to.set(key, { sums: sums.map(plus), ways: ways * times });
  else known.ways += ways * times;
}

const weighted = (counts: readonly number[], weights: readonly number[] = []): number =>
  counts.reduce((sum, count, group) => sum + count * (weights[group] ?? 0), 0);

/** Ways to deal `tie` equal values to the groups that still have room: how many to each, and the multinomial number. */
function shares(
  tie: number,
  sizes: readonly number[],
  filled: readonly number[],
): { counts: readonly number[]; ways: number }[] {
  let dealt: { counts: readonly number[]; left: number; ways: number }[] = [
    { counts: [], left: tie, ways: 1 },
  ];
  for (const [group, size] of sizes.entries()) {
    const room = size - (filled[group] ?? 0);
    dealt = dealt.flatMap(({ counts, left, ways }) => {
      const found: { counts: readonly number[]; left: number; ways: number }[] = [];
      let choose = 1;
      for (let here = 0; here <= Math.min(room, left); here++) {
        found.push({ counts: [...counts, here], left: left - here, ways: ways * choose });
        choose *= (left - here) / (here + 1);
      }
      return found;
    });
  }
  return dealt.filter(({ left }) => left === 0);
}
