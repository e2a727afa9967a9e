/** Planning with pens, groups and grades: what is simulated against values that are not. */
import { describe, expect, it } from "vitest";
import { makeStyle } from "../../src/formats/page/style.ts";
import { displayWidth } from "../../src/formats/page/width.ts";
import { planText } from "../../src/formats/plan/document.ts";
import { type CompareQuestion, planCompare } from "../../src/plan/index.ts";
import {
  clusteredShares,
  exactMantelHaenszel,
  fisherPower,
  mixedPower,
  rankFormula,
  rankSumShows,
  rankSumTest,
  seededRandom,
} from "../../src/statistics/index.ts";

const text = (question: CompareQuestion): string => planCompare(question).sentences.join(" ");

/** Power as planned, which 2000 runs bring within four standard errors of the true one. */
function expectPower(question: CompareQuestion, truth: number): void {
  const { power, runs } = planCompare({ ...question, over: [1] }).answer;
  expect(runs).toBe(2000);
  expect(Math.abs(Number(power) - truth)).toBeLessThan(4 * Math.sqrt((truth * (1 - truth)) / 2000));
}

/** Ways to share `n` out to `places`. */
function shared(n: number, places: number): number[][] {
  if (places === 1) return [[n]];
  return Array.from({ length: n + 1 }, (_, first) =>
    shared(n - first, places - 1).map((rest) => [first, ...rest]),
  ).flat();
}

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
const chanceOf = (counts: readonly number[], chances: readonly number[]): number =>
  counts.reduce(
    (product, count, place) => (product * (chances[place] ?? 0) ** count) / factorial(count),
    factorial(counts.reduce((sum, one) => sum + one, 0)),
  );

/** Probability that two samples of `n` from two distributions are called different, all of them counted. */
function enumerated(
  n: number,
  [now, then]: readonly [readonly number[], readonly number[]],
  shows: (now: readonly number[], then: readonly number[]) => boolean,
): number {
  let power = 0;
  for (const first of shared(n, now.length))
    for (const second of shared(n, then.length))
      if (shows(first, second)) power += chanceOf(first, now) * chanceOf(second, then);
  return power;
}

const valuesOf = (counts: readonly number[]): number[] =>
  counts.flatMap((count, value) => Array<number>(count).fill(value));

describe("grades", () => {
  it("meets Whitehead 1993 (from memory): 187 pigs in all see an odds ratio of exp(0.887) with 90 %", () => {
    const now = [20, 50, 20, 10];
    const odds = Math.exp(0.887);
    const below = [0.2, 0.7, 0.9].map((share) => (share * odds) / (1 - share + share * odds));
    const [a = 0, b = 0, c = 0] = below;
    const then = [a, b - a, c - b, 1 - c].map((share) => share * 100);
    expectPower({ grades: now, thenGrades: then, pigs: [94] }, 0.9);
    const shares = (list: readonly number[]) => list.map((one) => one / 100);
    expect(Math.ceil(2 * rankFormula(shares(now), shares(then), { power: 0.9 }).n)).toBeGreaterThan(180);
    expect(Math.ceil(2 * rankFormula(shares(now), shares(then), { power: 0.9 }).n)).toBeLessThan(205);
  });

  it("meets the power of all possible samples counted: 6 pigs and three grades", () => {
    const chances = [
      [0.6, 0.3, 0.1],
      [0.1, 0.2, 0.7],
    ] as const;
    const truth = enumerated(6, chances, (now, then) => rankSumTest(valuesOf(then), valuesOf(now)).p < 0.05);
    expect(truth).toBeGreaterThan(0.3);
    expectPower({ grades: [60, 30, 10], thenGrades: [10, 20, 70], pigs: [6] }, truth);
  });

  it("of two grades the formula is the usual one for two shares, 2 z² q (1 - q) / d²", () => {
    const z = 1.959963984540054 + 0.8416212335729143;
    const { n, superiority } = rankFormula([0.6, 0.4], [0.85, 0.15]);
    expect(n).toBeCloseTo((2 * z ** 2 * 0.275 * 0.725) / 0.25 ** 2, 9);
    expect(superiority).toBeCloseTo(0.375, 12);
  });

  it("counts only where it decides, and decides as the whole test does", () => {
    const random = seededRandom(20261130);
    for (let turn = 0; turn < 400; turn++) {
      const most = 2 + random.below(9);
      const worse = random.below(3);
      const rare = random.below(2) === 0;
      const draw = (size: number, more: number): number[] =>
        Array.from({ length: size }, () => {
          const drawn = random.below(most) + (random.below(3) < more ? 1 : 0);
          return rare && random.below(4) > 0 ? 0 : drawn;
        });
      const [first, second] = [draw(10 + random.below(40), 0), draw(10 + random.below(40), worse)];
      expect(rankSumShows(first, second, 0.05)).toBe(rankSumTest(first, second).p < 0.05);
    }
  });
});

describe("pens", () => {
  it("meets the power of all possible pens counted: 6 pens of two pigs, correlation 0.3", () => {
    // Two pigs of one pen: both affected p² + r p q, one 2 p q (1 - r), none q² + r p q.
    const pair = (p: number, r: number): number[] => {
      const both = r * p * (1 - p);
      return [(1 - p) ** 2 + both, 2 * p * (1 - p) * (1 - r), p ** 2 + both];
    };
    const pens = (counts: readonly number[]) =>
      valuesOf(counts).map((affected) => ({ affected, examined: 2 }));
    const truth = enumerated(6, [pair(0.8, 0.3), pair(0.1, 0.3)], (now, then) => {
      return clusteredShares([pens(then), pens(now)]).p < 0.05;
    });
    expect(truth).toBeGreaterThan(0.5);
    expectPower({ from: 0.8, to: 0.1, fromEachPen: 2, correlation: 0.3, pens: [6] }, truth);
    const graded = enumerated(6, [pair(0.8, 0.3), pair(0.1, 0.3)], (now, then) => {
      return rankSumTest(valuesOf(then), valuesOf(now)).p < 0.05;
    });
    const asked = { grades: [20, 80], thenGrades: [90, 10] };
    expectPower({ ...asked, fromEachPen: 2, correlation: 0.3, pens: [6] }, graded);
  });

  it("needs more pens the more alike their pigs are, and says what the design effect alone would", () => {
    const pensFor = (correlation: number): number =>
      Number(planCompare({ from: 0.4, to: 0.1, fromEachPen: 4, correlation, over: [10] }).answer.n);
    const numbers = [0, 0.1, 0.3].map(pensFor);
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    expect(new Set(numbers).size).toBe(3);
    expect(text({ from: 0.4, to: 0.15, fromEachPen: 4, correlation: 0.1, over: [5] })).toContain(
      "By formula it would be 51 pigs drawn singly; times the design effect 1 + (4 - 1) x 0.1 = 1.3 that is 17 pens.",
    );
  });
});

describe("groups", () => {
  it("in the same mix are exact: as one share where they have one, else by the sums of their counts", () => {
    const parts = [
      { n1: 5, n2: 6, p1: 0.4, p2: 0.1 },
      { n1: 7, n2: 4, p1: 0.4, p2: 0.1 },
    ];
    expect(mixedPower(parts)).toBeCloseTo(fisherPower(12, 10, { p1: 0.4, p2: 0.1 }), 12);
    const plan = planCompare({ from: [0.9, 0.5], to: [0.3, 0.1], pigs: [8, 4], over: [1, 2] });
    expect(plan.answer).toMatchObject({ pigs_now: 12, pigs_then: 12, runs: null });
    expect(plan.sentences[0]).toContain("8 and 4 pigs of the 2 groups now, 8 and 4 then");
    expect(plan.sentences[0]).toContain("a fall from 90 % to 30 % and from 50 % to 10 %");
    const random = seededRandom(7);
    const draw = (n: number, share: number): number =>
      Array.from({ length: n }, () => random.below(1000) < share * 1000).filter(Boolean).length;
    let shown = 0;
    for (let run = 0; run < 4000; run++) {
      const [x2, x1] = [draw(8, 0.9) + draw(4, 0.5), draw(8, 0.3) + draw(4, 0.1)];
      if ((exactMantelHaenszel([{ x1, n1: 12, x2, n2: 12 }])?.p ?? 1) <= 0.05) shown += 1;
    }
    const power = Number(plan.answer.power);
    expect(Math.abs(shown / 4000 - power)).toBeLessThan(4 * Math.sqrt((power * (1 - power)) / 4000));
  });

  it("in another mix set like against like: as all tables counted", () => {
    const chances = (n: number, p: number): number[] =>
      Array.from({ length: n + 1 }, (_, x) => chanceOf([n - x, x], [1 - p, p]));
    let truth = 0;
    for (const [a, pa] of chances(8, 0.9).entries())
      for (const [b, pb] of chances(4, 0.6).entries())
        for (const [c, pc] of chances(4, 0.3).entries())
          for (const [d, pd] of chances(8, 0.1).entries()) {
            const tables = [
              { x1: c, n1: 4, x2: a, n2: 8 },
              { x1: d, n1: 8, x2: b, n2: 4 },
            ];
            if ((exactMantelHaenszel(tables)?.p ?? 1) < 0.05) truth += pa * pb * pc * pd;
          }
    expectPower({ from: [0.9, 0.6], to: [0.3, 0.1], pigs: [8, 4], thenPigs: [4, 8] }, truth);
    expect(text({ from: [0.9, 0.6], to: [0.3, 0.1], pigs: [8, 4], thenPigs: [4, 8] })).toContain(
      "compare sets like against like, group by group",
    );
  });
});

describe("what is said", () => {
  it("names seed, runs and the limits of the simulation, and repeats itself", () => {
    const asked = { from: 0.5, to: 0.1, fromEachPen: 3, correlation: 0.1, over: [8] };
    const plan = planCompare({ ...asked, seed: 7 });
    expect(plan.sentences.join(" ")).toMatch(
      /Simulated 2000 times with seed 7: with 95 % confidence the true probability \(power\) lies between [\d.]+ % and [\d.]+ %/,
    );
    expect(planCompare({ ...asked, seed: 7 })).toEqual(plan);
    expect(planCompare({ ...asked, seed: 8 }).answer.power).not.toBe(plan.answer.power);
    const [lower, upper] = [Number(plan.answer.power_lower), Number(plan.answer.power_upper)];
    expect(lower).toBeLessThan(Number(plan.answer.power));
    expect(upper).toBeGreaterThan(Number(plan.answer.power));
  });

  it("says when no number is enough", () => {
    expect(text({ from: 0.3, to: 0.28, fromEachPen: 4, correlation: 0.3, over: [5] })).toContain(
      "4 pigs from each of 100 pens on each visit (400 pigs), pens and pigs drawn at random, are not enough",
    );
  });

  it.each<[CompareQuestion, string]>([
    [{ from: 0.4 }, "--from 40% --to 15%"],
    [{ from: 0.4, to: 0.2, grades: [50, 50], thenGrades: [40, 60] }, "not both"],
    [{ from: [0.4, 0.2], to: 0.1 }, "one for each group"],
    [{ from: [0.4, 0.2], to: [0.4, 0.2] }, "no change to see"],
    [{ grades: [50, 50], thenGrades: [50, 50, 0] }, "no change to see"],
    [{ from: 0.4, to: 0.1, pens: [6] }, "--from-each-pen 4"],
    [{ from: 0.4, to: 0.1, correlation: 0.1 }, "--from-each-pen 4"],
    [{ from: 0.4, to: 0.1, fromEachPen: 4, pigs: [20] }, "write --pens in place of --pigs"],
    [{ from: 0.4, to: 0.1, fromEachPen: 4, pens: [4] }, "write 5 or more"],
    [{ from: 0.4, to: 0.1, thenPigs: [20] }, "--then-pigs goes with --pigs"],
    [{ from: [0.4, 0.2], to: [0.1, 0.1], pigs: [20] }, "write one number for each group"],
    [{ from: 0.4, to: 0.1, pigs: [1001] }, "up to 1000 pigs"],
  ])("%j: says what to write", (question, hint) => {
    expect(() => planCompare(question)).toThrow(RangeError);
    expect(() => planCompare(question)).toThrow(hint);
  });

  it.each<CompareQuestion>([
    { from: 0.4, to: 0.15, pigs: [12], thenPigs: [20] },
    { from: [0.4, 0.2], to: [0.15, 0.1], fromEachPen: 4, correlation: 0.1, pens: [6, 3], thenPens: [3, 6] },
    { grades: [40, 30, 20, 10], thenGrades: [60, 25, 10, 5], pigs: [12] },
  ])("%j: fits 80 columns, with keys that scripts can rely on", (question) => {
    const plan = planCompare(question);
    for (const line of planText(plan, makeStyle(false)).split("\n"))
      expect(displayWidth(line)).toBeLessThanOrEqual(80);
    const keys = [plan.asked, plan.answer, ...plan.table.rows].flatMap((part) => Object.keys(part));
    for (const key of keys) expect(key).toMatch(/^[a-z][a-z0-9]*(_[a-z0-9]+)*$/);
    expect(JSON.stringify(plan)).not.toMatch(/undefined|NaN|\[object/);
  });
});
