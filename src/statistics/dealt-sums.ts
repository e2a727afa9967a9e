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

/** How far the values seen so far have filled the groups. */
interface State extends DealtSums {
  readonly filled: readonly number[];
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
  let states: State[] = [{ filled: sizes.map(() => 0), sums: weights.map(() => 0), ways: 1 }];
  for (const { value, count } of tied) {
    const next = new Map<string, State>();
    for (const state of states) {
      for (const share of shares(count, sizes, state.filled)) {
        const filled = state.filled.map((used, group) => used + (share.counts[group] ?? 0));
        const sums = state.sums.map((sum, place) => sum + value * weighted(share.counts, weights[place]));
        const key = `${filled.join()};${sums.join()}`;
        next.set(key, { filled, sums, ways: (next.get(key)?.ways ?? 0) + state.ways * share.ways });
      }
      if (next.size > MOST_STATES) return null;
    }
    states = [...next.values()];
  }
  return states;
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
