/** Exact tests over groups and strata, held against tables tried one by one. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  adjustedShares,
  exactMantelHaenszel,
  fisherExact,
  hodgesLehmann,
  kruskalWallis,
  leastRankP,
  leastSharesP,
  rankSumTest,
  sharesTest,
  stratifiedRankSum,
  stratifiedTrend,
  trendTest,
} from "../../src/statistics/index.ts";
import { runs } from "../random.ts";
import { expectClose } from "./reference.ts";

function choose(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= k; i++) ways = (ways * (n - k + i)) / i;
  return Math.round(ways);
}

const permutations = (values: readonly number[]): number[][] =>
  values.length < 2
    ? [[...values]]
    : values.flatMap((value, i) => permutations(values.toSpliced(i, 1)).map((rest) => [value, ...rest]));

interface Group {
  readonly affected: number;
  readonly examined: number;
  readonly score: number;
}

/** Every table of these groups with the same total, with its number of ways. */
function tablesOf(groups: readonly Group[]): { counts: number[]; ways: number }[] {
  const total = groups.reduce((sum, { affected }) => sum + affected, 0);
  let found: { counts: number[]; ways: number }[] = [{ counts: [], ways: 1 }];
  for (const { examined } of groups)
    found = found.flatMap(({ counts, ways }) =>
      Array.from({ length: examined + 1 }, (_, count) => ({
        counts: [...counts, count],
        ways: ways * choose(examined, count),
      })),
    );
  return found.filter(({ counts }) => counts.reduce((sum, count) => sum + count, 0) === total);
}

const groupsOf = (groups: number, most: number) =>
  fc.array(
    fc
      .integer({ min: 1, max: most })
      .chain((examined) =>
        fc.record({ affected: fc.nat(examined), examined: fc.constant(examined), score: fc.nat(200) }),
      ),
    { minLength: 2, maxLength: groups },
  );

describe("exact trend", () => {
  it("0 of 2, 1 of 2, 2 of 2 at equal steps: 4 of the 20 ways, where the normal p is 0.046", () => {
    const groups = [0, 1, 2].map((affected) => ({ affected, examined: 2, score: affected * 31 }));
    const { p, exactP } = trendTest(groups, { exact: true });
    expectClose(exactP ?? 0, 4 / 20, 1e-12, "exact");
    expect(p.toFixed(3)).toBe("0.046");
  });

  it("equals all tables tried, whole scores or not, and is never above 1", () => {
    fc.assert(
      fc.property(groupsOf(4, 5), fc.constantFrom(1, 1 / 3), (found, unit) => {
        const groups = found.map((group) => ({ ...group, score: group.score * unit }));
        fc.pre(new Set(groups.map(({ score }) => score)).size > 1);
        const tables = tablesOf(groups);
        const place = (counts: readonly number[]): number =>
          counts.reduce((sum, count, i) => sum + count * (found[i]?.score ?? 0), 0);
        const all = tables.reduce((sum, { ways }) => sum + ways, 0);
        const mean = tables.reduce((sum, { counts, ways }) => sum + ways * place(counts), 0) / all;
        const far = Math.abs(place(groups.map(({ affected }) => affected)) - mean);
        const extreme = tables.filter(({ counts }) => Math.abs(place(counts) - mean) >= far - 1e-6);
        const { exactP } = trendTest(groups, { exact: true });
        expectClose(exactP ?? -1, extreme.reduce((sum, { ways }) => sum + ways, 0) / all, 1e-9, "exact p");
        expect(exactP).toBeLessThanOrEqual(1);
      }),
      { numRuns: runs(60) },
    );
  });

  it("counts a tie that rounding would part", () => {
    const groups = [
      { affected: 1, examined: 3, score: 3 },
      { affected: 1, examined: 4, score: 1 },
      { affected: 0, examined: 3, score: 2 },
      { affected: 0, examined: 2, score: 114 },
    ];
    const thirds = groups.map((group) => ({ ...group, score: group.score / 3 }));
    expectClose(trendTest(thirds, { exact: true }).exactP ?? 0, 9 / 11, 1e-12, "thirds");
    expectClose(trendTest(groups, { exact: true }).exactP ?? 0, 9 / 11, 1e-12, "whole");
  });

  it("rejects a true null in at most 5 % of samples, every outcome of 2, 2 and 2 pigs weighed; normal does not", () => {
    const rejected = (share: number, exact: boolean): number => {
      let sum = 0;
      for (let code = 0; code < 27; code++) {
        const counts = [code % 3, Math.floor(code / 3) % 3, Math.floor(code / 9)];
        const groups = counts.map((affected, i) => ({ affected, examined: 2, score: i }));
        const test = trendTest(groups, { exact: true });
        if ((exact ? (test.exactP ?? 1) : test.p) >= 0.05) continue;
        sum += counts.reduce((product, x) => product * choose(2, x) * share ** x * (1 - share) ** (2 - x), 1);
      }
      return sum;
    };
    const shares = Array.from({ length: 19 }, (_, i) => (i + 1) / 20);
    expect(Math.max(...shares.map((share) => rejected(share, true)))).toBeLessThanOrEqual(0.05);
    expect(Math.max(...shares.map((share) => rejected(share, false)))).toBeGreaterThan(0.05);
  });

  it("comes near the normal p in large groups, and gives up where it would take long", () => {
    const large = [40, 50, 60].map((affected, i) => ({ affected, examined: 120, score: i * 30 }));
    const { p, exactP } = trendTest(large, { exact: true });
    expect(Math.abs((exactP ?? 1) - p)).toBeLessThan(0.004);
    const many = Array.from({ length: 12 }, (_, i) => ({
      affected: 12 + i,
      examined: 30,
      score: i * 37 + (i % 5),
    }));
    expect(trendTest(many, { exact: true }).exactP).toBe(null);
  });

  it("within strata equals all pairs of tables tried, and one stratum is the plain test", () => {
    fc.assert(
      fc.property(groupsOf(3, 3), groupsOf(3, 3), (first, second) => {
        const place = (groups: readonly Group[], counts: readonly number[]): number =>
          counts.reduce((sum, count, i) => sum + count * (groups[i]?.score ?? 0), 0);
        const pairs = tablesOf(first).flatMap((one) =>
          tablesOf(second).map((other) => ({
            at: place(first, one.counts) + place(second, other.counts),
            ways: one.ways * other.ways,
          })),
        );
        const all = pairs.reduce((sum, { ways }) => sum + ways, 0);
        const mean = pairs.reduce((sum, { at, ways }) => sum + at * ways, 0) / all;
        const counts = (groups: readonly Group[]) => groups.map(({ affected }) => affected);
        const far = Math.abs(place(first, counts(first)) + place(second, counts(second)) - mean);
        const extreme = pairs.filter(({ at }) => Math.abs(at - mean) >= far - 1e-7);
        const { exactP } = stratifiedTrend([first, second], { exact: true });
        expectClose(exactP ?? -1, extreme.reduce((sum, { ways }) => sum + ways, 0) / all, 1e-9, "strata");
      }),
      { numRuns: runs(40) },
    );
  });
});

describe("Freeman & Halton", () => {
  it("0 of 5, 0 of 5, 3 of 5: 30 of the 455 ways, where chi-squared says 0.024", () => {
    const got = sharesTest([0, 0, 3].map((affected) => ({ affected, examined: 5 })));
    expectClose(got.exactP ?? 0, 30 / 455, 1e-12, "exact");
    expect([got.p.toFixed(3), got.leastExpected]).toEqual(["0.024", 1]);
  });

  it("equals all tables tried; of two groups it is Fisher's test", () => {
    fc.assert(
      fc.property(groupsOf(4, 5), (groups) => {
        const tables = tablesOf(groups);
        const all = tables.reduce((sum, { ways }) => sum + ways, 0);
        const observed = groups.reduce((ways, one) => ways * choose(one.examined, one.affected), 1);
        const extreme = tables.filter(({ ways }) => ways <= observed);
        const p = extreme.reduce((sum, { ways }) => sum + ways, 0) / all;
        expectClose(sharesTest(groups).exactP ?? -1, p, 1e-9, "exact p");
        const [one, other] = groups;
        if (groups.length > 2 || one === undefined || other === undefined) return;
        const fisher = fisherExact({
          x1: one.affected,
          n1: one.examined,
          x2: other.affected,
          n2: other.examined,
        });
        expectClose(fisher.p, p, 1e-9, "Fisher");
      }),
      { numRuns: runs(100) },
    );
  });
});

describe("exact Mantel-Haenszel", () => {
  it("penicillin and rabbits (Agresti 1990, in R's mantelhaen.test help): p 0.040", () => {
    // Cured of immediate, cured of delayed; R's help page prints '=> p - 0.040' for exact = TRUE.
    const rabbits = [
      { x1: 0, n1: 6, x2: 0, n2: 5 },
      { x1: 3, n1: 6, x2: 0, n2: 6 },
      { x1: 6, n1: 6, x2: 2, n2: 6 },
      { x1: 5, n1: 6, x2: 6, n2: 6 },
      { x1: 2, n1: 2, x2: 5, n2: 5 },
    ];
    const got = exactMantelHaenszel(rabbits);
    expect(got?.p.toFixed(3)).toBe("0.040");
    // P(S >= 16) at the lower limit is half of 5 %, tried over all tables of the three strata that can vary.
    const odds = got?.lower ?? 0;
    const three = [
      [6, 6, 3],
      [6, 6, 8],
      [6, 6, 11],
    ] as const;
    let sums = new Map([[0, 1]]);
    for (const [n1, n2, total] of three) {
      const next = new Map<number, number>();
      for (const [sum, weight] of sums)
        for (let x = Math.max(0, total - n2); x <= Math.min(n1, total); x++)
          next.set(
            sum + x,
            (next.get(sum + x) ?? 0) + weight * choose(n1, x) * choose(n2, total - x) * odds ** x,
          );
      sums = next;
    }
    const weigh = (some: [number, number][]): number => some.reduce((sum, [, weight]) => sum + weight, 0);
    expectClose(weigh([...sums].filter(([sum]) => sum >= 14)) / weigh([...sums]), 0.025, 1e-9, "lower limit");
  });

  it("of one stratum is Fisher's test; a stratum that says nothing changes nothing", () => {
    const table = fc
      .record({ n1: fc.integer({ min: 1, max: 20 }), n2: fc.integer({ min: 1, max: 20 }) })
      .chain(({ n1, n2 }) =>
        fc.record({ x1: fc.nat(n1), n1: fc.constant(n1), x2: fc.nat(n2), n2: fc.constant(n2) }),
      );
    fc.assert(
      fc.property(table, (groups) => {
        const plain = fisherExact(groups);
        const got = exactMantelHaenszel([groups, { x1: 0, n1: 4, x2: 0, n2: 3 }]);
        expectClose(got?.p ?? -1, plain.p, 1e-12, "p");
        if (plain.lower > 0) expectClose(got?.lower ?? -1, plain.lower, 1e-10, "lower");
        if (Number.isFinite(plain.upper)) expectClose(got?.upper ?? -1, plain.upper, 1e-10, "upper");
      }),
      { numRuns: runs(60) },
    );
  });

  it("gives up on strata too large to count, and works with ten million in Fisher's test", () => {
    const large = { x1: 3000, n1: 9000, x2: 3100, n2: 9000 };
    expect(exactMantelHaenszel([large, large])).toBe(null);
    // Normal limits of ln OR: the counts are so large that they agree to five digits.
    const got = fisherExact({ x1: 4_000_000, n1: 10_000_000, x2: 5_000_000, n2: 10_000_000 });
    const se = Math.sqrt(1 / 4e6 + 1 / 6e6 + 2 / 5e6);
    expectClose(got.oddsRatio ?? 0, 2 / 3, 1e-6, "odds ratio");
    expectClose(got.lower, (2 / 3) * Math.exp(-1.959963984540054 * se), 1e-5, "lower");
  });
});

describe("van Elteren", () => {
  const grades = fc.array(fc.nat(4), { minLength: 1, maxLength: 5 });

  it("of one stratum is the rank-sum test, and turns round with the groups", () => {
    fc.assert(
      fc.property(grades, grades, (first, second) => {
        const got = stratifiedRankSum([{ first, second }]);
        const plain = rankSumTest(first, second);
        expectClose(got.p, plain.p, 1e-9, "p");
        expect(got.superiority).toBeCloseTo(plain.superiority, 12);
        expect(stratifiedRankSum([{ first: second, second: first }]).p).toBeCloseTo(got.p, 9);
      }),
    );
  });

  it("two strata wholly apart: two of all ways to share both out", () => {
    const strata = [
      { first: [1, 2, 3], second: [4, 5] },
      { first: [2, 3], second: [7, 8, 9] },
    ];
    expectClose(stratifiedRankSum(strata).p, 2 / (10 * 10), 1e-12, "p");
  });
});

describe("the least p", () => {
  it("of rank tests: two of all ways, also for unlike sizes; of Fisher's test one of them", () => {
    expectClose(leastRankP([3, 4]), 2 / 35, 1e-12, "3 and 4");
    expectClose(leastSharesP([3, 4]), 1 / 35, 1e-12, "shares");
    expectClose(leastSharesP([3, 3]), 2 / 20, 1e-12, "alike");
  });

  it("is what the tests give at most: no values of these sizes go below, and some reach it", () => {
    const sizes = fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 2, maxLength: 3 });
    fc.assert(
      fc.property(sizes, fc.array(fc.integer(), { minLength: 9, maxLength: 9 }), (some, order) => {
        const total = some.reduce((sum, size) => sum + size, 0);
        // Values 1 to N without ties in a random order.
        const values = Array.from({ length: total }, (_, i) => i).sort(
          (a, b) => (order[a] ?? 0) - (order[b] ?? 0),
        );
        const groups = some.map((size, i) => {
          const from = some.slice(0, i).reduce((sum, one) => sum + one, 0);
          return values.slice(from, from + size);
        });
        const { exactP } = kruskalWallis(groups, { exact: true });
        expect(exactP ?? 1).toBeGreaterThanOrEqual(leastRankP(some) * (1 - 1e-9));
      }),
    );
    const all = permutations([1, 2, 3, 4, 5, 6]).map(
      (v) => kruskalWallis([v.slice(0, 2), v.slice(2, 5), v.slice(5)], { exact: true }).exactP ?? 1,
    );
    expectClose(Math.min(...all), leastRankP([2, 3, 1]), 1e-9, "reached");
    for (const counts of [
      [5, 0, 0],
      [5, 5, 0],
    ]) {
      const got = sharesTest(counts.map((affected) => ({ affected, examined: 5 })));
      expect(got.exactP ?? 0).toBeGreaterThanOrEqual(leastSharesP([5, 5, 5]) * (1 - 1e-9));
    }
    expectClose(
      sharesTest([5, 0, 0].map((affected) => ({ affected, examined: 5 }))).exactP ?? 0,
      leastSharesP([5, 5, 5]),
      1e-9,
      "all in one group",
    );
  });
});

describe("a shift of which nothing is in doubt", () => {
  it("has no interval of one number", () => {
    const tied = hodgesLehmann([0, 0, 0, 0, 0, 0, 0, 1], [0, 0, 0, 0, 0, 0, 0, 0]);
    expect(tied).toMatchObject({ shift: 0, lower: null, upper: null, reason: "ties" });
    expect(hodgesLehmann([1, 2], [3, 4]).reason).toBe("too few values");
    expect(hodgesLehmann([1, 2, 3, 4, 5], [2, 4, 6, 8, 9]).reason).toBe(null);
  });
});

describe("Rao & Scott", () => {
  it("with design effects of 1 and many clusters is the chi-squared test; effects widen it", () => {
    const groups = { x1: 12, n1: 40, x2: 20, n2: 40 };
    const plain = adjustedShares([groups], { first: 1, second: 1, df: 1e7 });
    // chi-squared of 12/40 and 20/40: N (ad - bc)^2 over the margins = 80 * 320^2 / (40 * 40 * 32 * 48) = 3.3333.
    expect(plain.p).toBeCloseTo(0.0679, 4);
    const wide = adjustedShares([groups], { first: 4, second: 2, df: 14 });
    expect(wide.p).toBeGreaterThan(plain.p);
    expect(wide.effective).toEqual([10, 20]);
    // Wilson limits of 3 of 10 and 10 of 20 at the t of the test, joined by their squares (Newcombe 1998, method 10).
    const wilson = (x: number, n: number): [number, number] => {
      // t of 0.975 with 14 degrees of freedom, as printed in tables: 2.1448.
      const z = 2.1447866879169277;
      const half = z * Math.sqrt(((x / n) * (1 - x / n)) / n + (z * z) / (4 * n * n));
      const middle = x / n + (z * z) / (2 * n);
      return [(middle - half) / (1 + (z * z) / n), (middle + half) / (1 + (z * z) / n)];
    };
    const [low] = wilson(3, 10);
    const [, high] = wilson(10, 20);
    expect(wide.difference.lower).toBeCloseTo(-0.2 - Math.hypot(0.3 - low, high - 0.5), 10);
  });
});
