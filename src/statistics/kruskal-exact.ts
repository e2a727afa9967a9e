/** The exact distribution behind the Kruskal-Wallis test, for small groups. */
import type { Ranking } from "./ranks.ts";

/** More intermediate states than this are not worked through. */
const MOST_STATES = 20_000;

/** Sums of squares this near (relative) to the observed one count as equal. */
const TIE = 1e-9;

/** How far the values seen so far have filled the groups, and in how many of all ways. */
interface State {
  readonly filled: readonly number[];
  /** Doubled rank sum of each group. */
  readonly sums: readonly number[];
  readonly ways: number;
}

/**
 * P(the ranks lie as far apart as observed, or farther) when all ways to share the values out to the groups are
 * equally likely; `null` when that would take too many steps. Far apart is a large `Σ R² / n`, as in H.
 *
 * The values are dealt out tie by tie; states with the same filling and the same rank sums are put together.
 */
export function exactKruskalP({ doubled, ties }: Ranking): number | null {
  const sizes = doubled.map((ranks) => ranks.length);
  const apart = (sums: readonly number[]): number =>
    sums.reduce((total, sum, group) => total + (sum * sum) / (sizes[group] ?? 1), 0);
  const observed = apart(doubled.map((ranks) => ranks.reduce((a, b) => a + b, 0)));
  let states: State[] = [{ filled: sizes.map(() => 0), sums: sizes.map(() => 0), ways: 1 }];
  let seen = 0;
  for (const tie of ties) {
    const rank = 2 * seen + 1 + tie;
    const next = new Map<string, State>();
    for (const state of states) {
      for (const share of shares(tie, sizes, state.filled)) {
        const filled = state.filled.map((count, group) => count + (share.counts[group] ?? 0));
        const sums = state.sums.map((sum, group) => sum + rank * (share.counts[group] ?? 0));
        const key = `${filled.join()};${sums.join()}`;
        next.set(key, { filled, sums, ways: (next.get(key)?.ways ?? 0) + state.ways * share.ways });
      }
      if (next.size > MOST_STATES) return null;
    }
    states = [...next.values()];
    seen += tie;
  }
  let all = 0;
  let far = 0;
  for (const { sums, ways } of states) {
    all += ways;
    if (apart(sums) >= observed * (1 - TIE)) far += ways;
  }
  return far / all;
}

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
