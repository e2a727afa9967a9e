/** Comparisons of visits and groups: the example farm recomputed from plain counts, and properties that must hold. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { type CompareOptions, type Comparison, compareCases } from "../../src/compare/index.ts";
import { runs } from "../random.ts";
import { affected, farmOf, type Pig } from "./farm.ts";

const snout: CompareOptions = { indicators: ["snout-grade-2-up"] };
const grade: CompareOptions = { scales: ["maff-1978"] };

/** C(n, k) for small numbers, exactly. */
function choose(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= k; i++) ways = (ways * (n - k + i)) / i;
  return Math.round(ways);
}

/** Two-sided Fisher p by counting tables: those not more probable than the observed one. */
function fisherByCounting(a: number, n1: number, c: number, n2: number): number {
  const ways = (x: number): number => choose(n1, x) * choose(n2, a + c - x);
  const all = Array.from({ length: a + c + 1 }, (_, x) => (x > n1 || a + c - x > n2 ? 0 : ways(x)));
  const total = all.reduce((sum, one) => sum + one, 0);
  return all.filter((one) => one <= ways(a)).reduce((sum, one) => sum + one, 0) / total;
}

/** Affected of examined in the second side, then in the first. */
type Table = readonly [a: number, n1: number, c: number, n2: number];

/** Two-sided p over strata: every table of every stratum tried, sums of `a` not more probable than the observed one. */
function stratifiedByCounting(strata: readonly Table[]): number {
  let sums = new Map([[0, 1]]);
  for (const [a, n1, c, n2] of strata) {
    const next = new Map<number, number>();
    for (const [sum, ways] of sums)
      for (let x = Math.max(0, a + c - n2); x <= Math.min(n1, a + c); x++)
        next.set(sum + x, (next.get(sum + x) ?? 0) + ways * choose(n1, x) * choose(n2, a + c - x));
    sums = next;
  }
  const observed = sums.get(strata.reduce((sum, [a]) => sum + a, 0)) ?? 0;
  const all = [...sums.values()];
  const total = all.reduce((sum, one) => sum + one, 0);
  return all.filter((one) => one <= observed).reduce((sum, one) => sum + one, 0) / total;
}

/** Two-sided exact rank-sum p over every choice of the second side, by brute force. */
function rankSumByForce(first: readonly number[], second: readonly number[]): number {
  const all = [...first, ...second];
  const midRank = all.map(
    (value) =>
      all.filter((other) => other < value).length + all.filter((other) => other === value).length / 2,
  );
  const mean = (midRank.reduce((sum, rank) => sum + rank, 0) / all.length) * second.length;
  const far = Math.abs(midRank.slice(first.length).reduce((sum, rank) => sum + rank, 0) - mean);
  let beyond = 0;
  let ways = 0;
  const pick = (from: number, left: number, sum: number): void => {
    if (left === 0) {
      ways += 1;
      if (Math.abs(sum - mean) >= far - 1e-9) beyond += 1;
      return;
    }
    for (let i = from; i <= all.length - left; i++) pick(i + 1, left - 1, sum + (midRank[i] ?? 0));
  };
  pick(0, second.length, 0);
  return beyond / ways;
}

const only = (comparisons: readonly Comparison[] | undefined, id: string): Comparison => {
  const found = comparisons?.find(({ question }) => question === id);
  if (found === undefined) throw new Error(`no comparison ${id}`);
  return found;
};

describe("the example farm", () => {
  const archive = readCases(["cases-example/alder-farm"]);
  const report = compareCases(archive);
  const [random, ill] = report.blocks;

  it("compares pigs drawn at random with each other, and pigs chosen for signs with each other", () => {
    expect(report.between).toBe("visits");
    expect(report.blocks.map(({ basis, sides }) => [basis, sides.map(({ pigs }) => pigs)])).toEqual([
      ["random", [10, 10]],
      ["clinical", [3, 2]],
    ]);
    expect(report.left_out).toEqual([
      "1 pig on 2026-03-14 (healthy comparison): none chosen so on another side",
    ]);
  });

  it("gives Fisher, the joined limits and the counts of the pigs' files", () => {
    // Grades of the pigs drawn at random, as they stand in the files.
    const march = [2, 3, 1, 2, 2, 3, 1, 2, 0, 2];
    const september = [0, 1, 0, 2, 0, 1, 0, 0, 2, 1];
    const one = only(random?.comparisons, "snout-grade-2-up");
    expect(one.sides.map((side) => [side.affected, side.examined])).toEqual([
      [march.filter((value) => value >= 2).length, 10],
      [september.filter((value) => value >= 2).length, 10],
    ]);
    expect(one.result?.p).toBeCloseTo(fisherByCounting(2, 10, 7, 10), 12);
    if (one.result?.test !== "fisher-exact") throw new Error("not a comparison of shares");
    // Clopper-Pearson limits of 2 and 7 of 10, as R's binom.test prints them.
    const [l2, u2] = [0.02521073, 0.5560955];
    const [l7, u7] = [0.3475471, 0.9332605];
    expect(one.result.difference.value).toBeCloseTo(-0.5, 14);
    // Away from 0 it is that of 3 and 8 of 12, by t of 18 degrees of freedom (R: 2.100922), which lies farther out.
    const added = -5 / 12 - 2.100922 * Math.sqrt(((3 / 12) * (9 / 12) + (8 / 12) * (4 / 12)) / 12);
    expect(added).toBeLessThan(-0.5 - Math.hypot(0.2 - l2, u7 - 0.7));
    expect(one.result.difference.lower).toBeCloseTo(added, 6);
    expect(one.result.difference.upper).toBeCloseTo(-0.5 + Math.hypot(u2 - 0.2, 0.7 - l7), 6);
    expect(one.result.risk_ratio.value).toBeCloseTo(2 / 7, 14);
    // Rooms: 3 of 4 and 4 of 6 in March, 1 of 5 and 1 of 5 in September: the claim rests on like against like.
    const rooms: Table[] = [
      [1, 5, 3, 4],
      [1, 5, 4, 6],
    ];
    expect(one.result.stratified).toMatchObject({ by: ["group", "age_class"], strata: 2, pigs_outside: 0 });
    expect(one.claim_on).toBe("strata");
    expect(one.p).toBeCloseTo(stratifiedByCounting(rooms), 12);
    expect(one.shown).toBe(false);

    const scores = only(random?.comparisons, "maff-1978");
    expect(scores.result?.p).toBeCloseTo(rankSumByForce(march, september), 10);
    if (scores.result?.test !== "mann-whitney") throw new Error("not a comparison of scores");
    const pairs = september.flatMap((b) => march.map((a) => b - a)).sort((a, b) => a - b);
    expect(scores.result.shift?.value).toBe(((pairs[49] ?? 0) + (pairs[50] ?? 0)) / 2);
    expect(scores.result.exact).toBe(true);
  });

  it("adjusts for all comparisons of a block: none below its own p, in one order, and far less than one by one", () => {
    const tested = (random?.comparisons ?? []).flatMap(({ p, p_adjusted, organ }) =>
      p === null || p_adjusted === null ? [] : [{ p, p_adjusted, organ }],
    );
    expect(random?.adjustment).toEqual({
      method: "smallest-p",
      comparisons: tested.length,
      questions: new Set(tested.map(({ organ }) => organ)).size,
      without: null,
      permutations: 9999,
      seed: 1,
    });
    expect(random?.adjustment.questions).toBe(4);
    const sorted = [...tested].sort((a, b) => a.p - b.p);
    for (const { p, p_adjusted } of sorted) expect(p_adjusted).toBeGreaterThanOrEqual(p);
    // Sixteen readings of four organs: 0.010 becomes about 0.025 and not 0.17.
    expect(sorted[0]?.p_adjusted).toBeGreaterThan(0.015);
    expect(sorted[0]?.p_adjusted).toBeLessThan(0.035);
  });

  it("answers first, in one sentence, and shows a question that was named beforehand", () => {
    expect(report.answer).toMatch(
      /^Like against like \(by group and age class\), Summed snout score 0-18 was lower .* allowing for 4 questions\./,
    );
    const named = compareCases(archive, grade);
    expect(named.answer).toBe(
      "Like against like (by group and age class), Snout grade 0-5 was lower on 2026-09-19 (median 0.5 in 10 pigs) than on 2026-03-14 (median 2 in 10 pigs): the second side is higher in 19.4 of 100 pairs of like pigs, ties half; van Elteren p 0.023, exact.",
    );
  });

  it("says of ill pigs that they are the pigs examined, and that so few show nothing", () => {
    expect(ill).toMatchObject({ prevalence: false, too_few: true });
    expect(ill?.answer).toMatch(/^With 3 and 2 pigs nothing can be shown/);
    expect(only(ill?.comparisons, "snout-grade-2-up").sentence).toMatch(
      /^Of the pigs examined \(chosen for signs\)/,
    );
    expect(JSON.stringify(ill)).not.toMatch(/\bthe herd\b/);
  });

  it("takes all pigs together only when asked, and says so with the number", () => {
    const { answer, blocks } = compareCases(archive, { ...snout, evenIf: ["basis"] });
    expect(answer).toMatch(
      /^Of the pigs examined \(chosen in different ways\), no change was shown in snout grade 2 or more: 10 of 14 on 2026-03-14 and 3 of 12 on 2026-09-19/,
    );
    expect(blocks[0]?.comparisons[0]?.result?.p).toBeCloseTo(fisherByCounting(3, 12, 10, 14), 12);
    expect(blocks[0]?.comparisons[0]?.caveats[0]).toMatchObject({ although: "basis" });
  });
});

describe("scores with one common value", () => {
  it("are not summed up by a shift of 0 alone", () => {
    const { answer } = compareCases(
      farmOf({ "2026-01-01": affected(20, 40), "2026-06-01": affected(6, 40) }),
      grade,
    );
    // 6 x 20 pairs higher, (6 x 20 + 34 x 20) / 2 tied halves, of 1600.
    expect(answer).toContain("shift 0 points");
    expect(answer).toContain(
      `higher in ${(((6 * 20 + (6 * 20 + 34 * 20) / 2) / 1600) * 100).toFixed(1)} of 100 pairs`,
    );
  });
});

describe("more than two sides", () => {
  it("tests a trend over visits, on the days between them", () => {
    const { blocks, answer } = compareCases(
      farmOf({ "2026-01-01": affected(9, 10), "2026-01-31": affected(5, 10), "2026-07-30": affected(1, 10) }),
      snout,
    );
    const one = only(blocks[0]?.comparisons, "snout-grade-2-up");
    // Armitage 1955: T = Σ (x - n p) t, variance p (1 - p) Σ n (t - mean)².
    const days = [0, 30, 210];
    const counts = [9, 5, 1];
    const t = counts.reduce((sum, x, i) => sum + (x - 5) * (days[i] ?? 0), 0);
    const spread = days.reduce((sum, day) => sum + 10 * (day - 80) ** 2, 0);
    expect(one.result).toMatchObject({ test: "cochran-armitage", places: days, unit: "days" });
    if (one.result?.test === "cochran-armitage")
      expect(one.result.z).toBeCloseTo(t / Math.sqrt(0.25 * spread), 12);
    expect(answer).toMatch(/^Snout grade 2 or more became rarer: 9 of 10 on 2026-01-01, /);
  });

  it("tests a trend of scores by ranks (Cuzick), and leaves out a visit at which it was not read", () => {
    const grades = (values: readonly number[]): Pig[] => values.map((value) => ({ grade: value }));
    const archive = farmOf({
      "2026-01-01": grades([5, 4, 4]),
      "2026-02-01": grades([3, 2, 2]),
      "2026-03-01": grades([0, 1, 1]),
      "2026-04-01": [{ grade: null }],
    });
    const one = only(compareCases(archive, grade).blocks[0]?.comparisons, "maff-1978");
    expect(one.result).toMatchObject({ test: "cuzick", places: [0, 31, 59], unit: "days", exact: true });
    // All 1680 ways are equally likely; only this one and its mirror image lie as far apart.
    expect(one.p).toBeCloseTo(2 / 1680, 12);
    expect(one).toMatchObject({ claim_on: "pigs", shown: true });
    expect(one.least_p).toBeCloseTo(2 / 1680, 12);
    expect(one.caveats.map(({ text }) => text)).toContain("could not be read in any pig on 2026-04-01");
  });

  it("tests scores of three groups without an order (Kruskal & Wallis)", () => {
    const grades = (group: string, values: readonly number[]): Pig[] =>
      values.map((value) => ({ grade: value, group }));
    const visit = [...grades("a", [5, 4, 4]), ...grades("b", [0, 1, 1]), ...grades("c", [3, 2, 2])];
    const { blocks } = compareCases(farmOf({ "2026-01-01": visit }), { ...grade, between: "groups" });
    const one = only(blocks[0]?.comparisons, "maff-1978");
    // Rank sums 24, 15 and 6 of 9 with three ties of two: H = 7.2 / (1 - 18 / 720).
    expect(one.result).toMatchObject({ test: "kruskal-wallis", df: 2, exact: true });
    if (one.result?.test === "kruskal-wallis") expect(one.result.h).toBeCloseTo(7.2 / (1 - 18 / 720), 12);
    // All 1680 ways are equally likely; only the 6 orders of the groups lie as far apart.
    expect(one.p).toBeCloseTo(6 / 1680, 12);
  });
});

describe("sides that are made up differently", () => {
  it("says when like against like points the other way", () => {
    // In both rooms it became more common, but more pigs now come from the room where it is rare.
    const { blocks } = compareCases(
      farmOf({
        "2026-01-01": [...affected(16, 20, { group: "a" }), ...affected(0, 5, { group: "b" })],
        "2026-06-01": [...affected(5, 5, { group: "a" }), ...affected(4, 20, { group: "b" })],
      }),
      snout,
    );
    const [one] = blocks[0]?.comparisons ?? [];
    expect(one?.caveats.map(({ text }) => text).join()).toContain("points the other way");
    // Within rooms 5 of 5 against 16 of 20, and 4 of 20 against 0 of 5.
    expect(one?.p).toBeCloseTo(
      stratifiedByCounting([
        [5, 5, 16, 20],
        [4, 20, 0, 5],
      ]),
      12,
    );
    expect(one?.sentence).toMatch(/^No change was shown/);
  });

  it("leaves out pigs of an age class that the other side does not have, and says so", () => {
    const { blocks } = compareCases(
      farmOf({
        "2026-01-01": [...affected(3, 5), ...affected(1, 4, { age: "150 d" })],
        "2026-06-01": affected(1, 6),
      }),
      snout,
    );
    const [one] = blocks[0]?.comparisons ?? [];
    expect(one?.sides.map(({ examined }) => examined)).toEqual([5, 6]);
    expect(one?.caveats.map(({ text }) => text).join()).toContain("4 pigs on 2026-01-01 (finisher)");
  });

  it("counts the pens where pigs share them", () => {
    const sharedPens = farmOf({
      "2026-01-01": affected(2, 6, { pen: 1 }),
      "2026-06-01": affected(2, 6, { pen: 2 }),
    });
    expect(compareCases(sharedPens, snout).blocks[0]?.cautions.join()).toContain(
      "6 pigs of 1 known pen on 2026-01-01; 6 pigs of 1 known pen on 2026-06-01",
    );
  });
});

describe("properties", () => {
  const counts = fc
    .record({ n1: fc.integer({ min: 1, max: 9 }), n2: fc.integer({ min: 1, max: 9 }) })
    .chain(({ n1, n2 }) =>
      fc.record({
        n1: fc.constant(n1),
        n2: fc.constant(n2),
        x1: fc.integer({ min: 0, max: n1 }),
        x2: fc.integer({ min: 0, max: n2 }),
      }),
    );
  const compared = (first: readonly Pig[], second: readonly Pig[]) => {
    const { blocks } = compareCases(farmOf({ "2026-01-01": first, "2026-06-01": second }), {
      ...snout,
      ...grade,
    });
    return blocks[0]?.comparisons.map(({ result }) => result) ?? [];
  };

  it("swapping the sides turns effects round and keeps p", () => {
    fc.assert(
      fc.property(counts, ({ x1, n1, x2, n2 }) => {
        const [there, thereScore] = compared(affected(x1, n1), affected(x2, n2));
        const [back, backScore] = compared(affected(x2, n2), affected(x1, n1));
        if (there?.test !== "fisher-exact" || back?.test !== "fisher-exact") throw new Error("shares");
        if (thereScore?.test !== "mann-whitney" || backScore?.test !== "mann-whitney")
          throw new Error("scores");
        expect(there.p).toBeCloseTo(back.p, 10);
        expect(there.difference.value).toBeCloseTo(-(back.difference.value ?? 0), 12);
        expect(there.difference.lower).toBeCloseTo(-(back.difference.upper ?? 0), 9);
        expect(thereScore.p).toBeCloseTo(backScore.p, 10);
        expect(thereScore.shift?.value).toBeCloseTo(-(backScore.shift?.value ?? 0), 12);
        expect(thereScore.superiority + backScore.superiority).toBeCloseTo(1, 12);
      }),
      { numRuns: runs(25) },
    );
  });

  it("claims a change only below the level, never of equal sides, and allowing for more never makes a p smaller", () => {
    fc.assert(
      fc.property(counts, ({ x1, n1, x2, n2 }) => {
        const archive = farmOf({ "2026-01-01": affected(x1, n1), "2026-06-01": affected(x2, n2) });
        const { blocks } = compareCases(archive, { ...snout, ...grade });
        for (const one of blocks[0]?.comparisons ?? []) {
          expect(one.p_adjusted ?? 0).toBeGreaterThanOrEqual(one.p ?? 1);
          expect(one.p_adjusted ?? 2).toBeLessThanOrEqual(1);
          expect(one.shown).toBe((one.p_adjusted ?? 1) < 0.05);
          expect(/no change was shown/i.test(one.sentence)).toBe(!one.shown);
          if (x1 * n2 === x2 * n1) expect(one.shown).toBe(false);
        }
      }),
      { numRuns: runs(25) },
    );
  });
});
