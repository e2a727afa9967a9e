/** Intervals of a stratum: the method, the known group, pens, an eye that errs; against values from outside. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Case } from "../../src/cases/index.ts";
import { type ClusterKind, clustersOf, sharePens, tooFewClusters } from "../../src/herd/clusters.ts";
import { corrected } from "../../src/herd/corrected.ts";
import { type Estimate, type HerdOptions, herdEstimates, type TestAccuracy } from "../../src/herd/index.ts";
import { clusterLimits } from "../../src/knowledge/index.ts";
import { binomialInterval, langReiczigelInterval } from "../../src/statistics/index.ts";
import { runs } from "../random.ts";
import { consolidation, organ, pig } from "../score/pigs.ts";
import { expectClose, reference } from "../statistics/reference.ts";
import { archiveOf, farm, visit } from "./archive.ts";

interface Where {
  readonly basis?: string;
  readonly pen?: number;
  readonly group?: string;
  readonly litter?: string;
  readonly age?: string;
}
const record = (ill: boolean, { basis = "random", ...place }: Where) => ({
  format: 1,
  pig: place,
  selection: { basis },
  ...organ("respiratory.lungs", { consolidation: consolidation({ left_cranial: ill ? 30 : 0 }) }),
});
const one = (ill: boolean, where: Where = {}): Case => pig(record(ill, where));
const times = (number: number, some: Case): Case[] => Array<Case>(number).fill(some);
const sample = (ill: number, examined: number, where: Where = {}): Case[] => [
  ...times(ill, one(true, where)),
  ...times(examined - ill, one(false, where)),
];

const asked = { indicators: ["lung-consolidation"], scales: ["madec-kobisch-1982"] };
function only(cases: readonly Case[], options: HerdOptions = {}): Estimate {
  const { estimates } = herdEstimates(cases, { ...asked, ...options });
  const [found] = estimates;
  if (found === undefined || estimates.length !== 1) throw new Error(`${estimates.length} estimates`);
  return found;
}
const close = (found: number | null, wanted: number, tolerance = 1e-8) =>
  expectClose(found ?? Number.NaN, wanted, tolerance, "limit");

describe("choice of interval (values of R 4.2.2 and 40-digit arithmetic)", () => {
  test.each(["clopper-pearson", "blaker"] as const)("%s", (interval) => {
    const rows = reference<{ x: number; n: number; conf: number }, { lower: number; upper: number }>(
      interval,
      5,
    );
    const small = rows.filter(({ input }) => input.n > 1 && input.n <= 300).slice(0, 6);
    expect(small.length).toBeGreaterThanOrEqual(4);
    for (const { input, output } of small) {
      const found = only(sample(input.x, input.n), { interval, level: input.conf });
      expect(found).toMatchObject({
        method: interval,
        level: input.conf,
        affected: input.x,
        examined: input.n,
      });
      close(found.lower, output.lower);
      close(found.upper, output.upper);
    }
  });

  test("nothing else changes with it", () => {
    const { method: _, lower: __, upper: ___, wording: ____, ...a } = only(sample(3, 12));
    const { method, lower, upper, wording, ...b } = only(sample(3, 12), { interval: "blaker" });
    expect(b).toEqual(a);
    expect(wording).toContain("25.0 %, 95 % CI 7.2 to 54.4 %");
    expect([method, lower !== null && upper !== null]).toEqual(["blaker", true]);
  });
});

/** A case of each answer, in a group whose head count is recorded where it is said. */
function room(
  { head, at_risk }: { readonly head?: number; readonly at_risk?: number },
  basis = "random",
): { ill: Case; well: Case } {
  const { cases } = archiveOf({
    "farm.yaml": { ...farm("alder"), groups: head === undefined ? {} : { "nursery-1": { head } } },
    "v/visit.yaml": {
      ...visit("spring", "2026-03-14"),
      groups: { "nursery-1": at_risk === undefined ? {} : { at_risk } },
    },
    "v/1.yaml": record(true, { basis, group: "nursery-1" }),
    "v/2.yaml": record(false, { basis, group: "nursery-1" }),
  });
  const [ill, well] = cases;
  if (ill === undefined || well === undefined) throw new Error("not read");
  return { ill, well };
}

describe("a group of known size", () => {
  test("the limits are those of R's hypergeometric search", () => {
    const rows = reference<
      { N: number; n: number; x: number; conf: number },
      { lower: number; upper: number }
    >("hypergeometric-ci", 40);
    const small = rows.filter(({ input }) => input.n > 1 && input.n <= 60 && input.n < input.N);
    expect(small.length).toBeGreaterThan(20);
    for (const { input, output } of small) {
      const { ill, well } = room({ head: input.N });
      const cases = [...times(input.x, ill), ...times(input.n - input.x, well)];
      const found = only(cases, { finite: true, level: input.conf });
      expect(found.method).toBe("hypergeometric");
      expect(found.population).toEqual({ group: "nursery-1", head: input.N, from: "farm.yaml" });
      close(found.lower, output.lower, 1e-12);
      close(found.upper, output.upper, 1e-12);
    }
  });

  test("0 of 30 in a room of 100: one-sided at most 8 pigs (exact rational arithmetic)", () => {
    const { ill, well } = room({ head: 100 });
    const none = only(times(30, well), { finite: true });
    expect(none.one_sided).toEqual({ limit: "upper", value: 0.08 });
    expect(none.wording).toContain("no more than 8.0 % of the group (one-sided)");
    expect(none.wording).toContain(
      "the interval is for the 100 pigs of the group (farm.yaml), as if each of them had the same chance to be drawn",
    );
    expect(only(times(30, ill), { finite: true }).one_sided).toEqual({ limit: "lower", value: 0.92 });
  });

  test("the count of the day goes before the usual one", () => {
    const { well } = room({ head: 100, at_risk: 64 });
    expect(only(times(5, well), { finite: true }).population).toEqual({
      group: "nursery-1",
      head: 64,
      from: "visit.yaml",
    });
  });

  test("a group examined whole is known", () => {
    const { ill, well } = room({ head: 8 }, "complete");
    const found = only([...times(3, ill), ...times(5, well)], { finite: true });
    expect(found).toMatchObject({ proportion: 3 / 8, lower: null, upper: null, method: null });
    expect(found.wording).toContain("prevalence in the pigs of the group (all were examined)");
  });

  test("a whole group that is smaller than the group says so, and is a number of these pigs", () => {
    for (const recorded of [{ head: 200 }, { at_risk: 200 }]) {
      const { ill, well } = room(recorded, "complete");
      const { cases } = archiveOf({
        "farm.yaml": { ...farm("alder"), groups: { "nursery-1": { head: 200 } } },
        "v/visit.yaml": visit("spring", "2026-03-14"),
        "v/1.yaml": { ...record(true, { basis: "complete", group: "nursery-1" }), case: "a" },
        "v/2.yaml": { ...record(false, { basis: "complete", group: "nursery-1" }), case: "b" },
      });
      const found = only([ill, well]);
      expect(found).toMatchObject({ reach: "these-pigs", proportion: 0.5, lower: null, upper: null });
      expect(found.wording).not.toContain("prevalence");
      expect(only(cases).why).toBe(
        "farm.yaml has 200 pigs in nursery-1, and of this whole group there are 2 cases",
      );
    }
  });

  test.each([
    ["no head count", room({}), 4, "neither visit.yaml nor farm.yaml says how many pigs are in nursery-1"],
    [
      "fewer than were examined",
      room({ head: 3 }),
      4,
      "farm.yaml has 3 pigs in nursery-1, but 4 were examined",
    ],
  ] as const)("%s: the interval of a large group, and why", (_, { well }, pigs, why) => {
    const found = only(times(pigs, well), { finite: true });
    expect(found.method).toBe("clopper-pearson");
    expect(found).not.toHaveProperty("population");
    close(found.upper, 1 - 0.025 ** (1 / pigs), 1e-12);
    expect(found.notes).toEqual([`the interval is that for a large group, because ${why}`]);
  });

  test("several groups, visits or ages are no one group", () => {
    const { cases } = archiveOf({
      "farm.yaml": { ...farm("alder"), groups: { a: { head: 50 }, b: { head: 50 } } },
      "v/visit.yaml": visit("spring", "2026-03-14"),
      "v/1.yaml": record(true, { group: "a", age: "60 d" }),
      "v/2.yaml": record(false, { group: "a", age: "160 d" }),
      "v/3.yaml": record(false, { group: "b", age: "60 d" }),
      "w/visit.yaml": visit("autumn", "2026-09-14"),
      "w/1.yaml": record(true, { group: "a", age: "60 d" }),
    });
    const why = (by: HerdOptions["by"]) =>
      herdEstimates(cases, { ...asked, finite: true, ...(by && { by }) }).estimates.map(
        ({ notes = [""] }) => notes[0],
      );
    const [pooled] = herdEstimates(cases, { ...asked, by: [] }).estimates;
    expect(pooled).toMatchObject({ reach: "these-pigs", why: "they are of 2 visits", lower: null });
    const [both] = herdEstimates(cases, { ...asked, by: ["visit"] }).estimates;
    expect(both).toMatchObject({ reach: "prevalence", method: "thinnest-stratum" });
    expect(both?.groups?.map(({ group, head }) => [group, head])).toEqual([
      ["a", 50],
      ["b", 50],
    ]);
    expect(why(["visit", "group"])[0]).toContain("the interval is for the 50 pigs");
  });

  test("the limits lie within what was seen, and narrow with the room", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 25 }),
        fc.nat(25),
        fc.integer({ min: 1, max: 60 }),
        (examined, some, more) => {
          const ill = Math.min(some, examined);
          const head = examined + more;
          const { ill: a, well } = room({ head });
          const found = only([...times(ill, a), ...times(examined - ill, well)], { finite: true });
          const [lower, upper] = [found.lower ?? Number.NaN, found.upper ?? Number.NaN];
          expect(lower).toBeGreaterThanOrEqual(ill / head);
          expect(upper).toBeLessThanOrEqual((head - examined + ill) / head);
          expect(lower).toBeLessThanOrEqual(upper);
          const wider = only([...times(ill, a), ...times(examined - ill, well)], {
            finite: true,
            level: 0.99,
          });
          expect(wider.lower).toBeLessThanOrEqual(lower);
          expect(wider.upper).toBeGreaterThanOrEqual(upper);
        },
      ),
      { numRuns: runs(25) },
    );
  });
});

const inPens = (
  pens: readonly (readonly [number, number])[],
  at = (pen: number): Where => ({ pen }),
): Case[] => pens.flatMap(([ill, examined], index) => sample(ill, examined, at(index + 1)));

describe("pens, rooms and litters", () => {
  type Output = { lower: number; upper: number; deff: number; nEffDfCapped: number };
  const rows = reference<{ clusters: [number, number][]; conf: number }, Output>("cluster-prevalence", 14);

  test.each(["pen", "litter"] as const)("by %s: values of an independent survey program", (cluster) => {
    for (const { input, output } of rows.slice(4, 9)) {
      const at = (index: number): Where => (cluster === "pen" ? { pen: index } : { litter: `S-${index}` });
      const found = only(inPens(input.clusters, at), { cluster, level: input.conf });
      expect(found.method).toBe("korn-graubard");
      close(found.lower, output.lower);
      close(found.upper, output.upper);
      expect(found.clusters).toMatchObject({ by: cluster, number: input.clusters.length, too_few: false });
      close(found.clusters?.design_effect ?? null, output.deff);
      close(found.clusters?.effective_size ?? null, output.nEffDfCapped);
    }
  });

  test("a room is the group; pens of two groups and of two visits are different pens", () => {
    const groups = [...sample(4, 5, { group: "a", pen: 1 }), ...sample(0, 5, { group: "b", pen: 1 })];
    const clusters = (some: readonly Case[], kind: ClusterKind) =>
      clustersOf(
        some.map((pig) => ({ one: pig, yes: false })),
        kind,
      ).counts.length;
    expect(clusters(groups, "room")).toBe(2);
    expect(clusters(groups, "pen")).toBe(2);
    const { cases } = archiveOf({
      "v/visit.yaml": visit("spring", "2026-03-14"),
      "v/1.yaml": record(true, { group: "a", pen: 1 }),
      "w/visit.yaml": visit("autumn", "2026-09-14"),
      "w/1.yaml": record(false, { group: "a", pen: 1 }),
    });
    expect(clusters(cases, "pen")).toBe(2);
    // Pens of several groups are not added up as if each group weighed the same.
    expect(only(groups, { cluster: "pen", by: [] })).toMatchObject({ reach: "these-pigs", lower: null });
  });

  test("pens too few to be trusted are said to be", () => {
    const found = only(
      inPens([
        [6, 6],
        [1, 6],
        [2, 6],
      ]),
      { cluster: "pen" },
    );
    expect(found.clusters).toMatchObject({ number: 3, too_few: true });
    expect(found.wording).toContain(
      "3 pens are too few to tell how alike pigs of one pen are, so do not rely on the interval",
    );
  });

  test.each([
    [
      "a pen is not recorded",
      [
        ...inPens([
          [1, 4],
          [3, 4],
        ]),
        one(true),
      ],
      "because the pen of 1 of 9 pigs is not recorded",
    ],
    ["one pen", inPens([[3, 8]]), "all 8 pigs are of one pen, so how much pens differ cannot be told"],
    [
      "equal pens",
      inPens([
        [2, 8],
        [2, 8],
      ]),
      "the pens do not differ, so how alike",
    ],
  ] as const)("%s: as drawn singly, and why", (_, cases, why) => {
    const found = only(cases, { cluster: "pen" });
    const plain = only(cases);
    expect(found).toMatchObject({ method: "clopper-pearson", lower: plain.lower, upper: plain.upper });
    expect(found.clusters).toMatchObject({ effective_size: null });
    expect(found.wording).toContain(why);
  });

  test.each([
    [
      "none affected",
      0,
      { lower: 0, upper: 1 - 0.025 ** (1 / 5) },
      { limit: "upper", value: 1 - 0.05 ** (1 / 5) },
    ],
    ["all affected", 8, { lower: 0.025 ** (1 / 5), upper: 1 }, { limit: "lower", value: 0.05 ** (1 / 5) }],
  ] as const)("%s: each pen counts as one pig, and why", (why, affected, limits, oneSided) => {
    const found = only(inPens(Array.from({ length: 5 }, () => [affected, 8])), { cluster: "pen" });
    expect(found.method).toBe("clopper-pearson");
    expect(found.lower).toBeCloseTo(limits.lower, 12);
    expect(found.upper).toBeCloseTo(limits.upper, 12);
    expect(found.one_sided?.limit).toBe(oneSided.limit);
    expect(found.one_sided?.value).toBeCloseTo(oneSided.value, 12);
    expect(found.clusters).toMatchObject({ effective_size: 5, design_effect: null });
    expect(found.wording).toContain(
      `${why}, so how alike pigs of one pen are cannot be told and each pen counts as one pig: 5 pens`,
    );
  });

  test("one pig a pen is what drawing singly is", () => {
    const cases = inPens(Array.from({ length: 14 }, (_, index) => [index < 5 ? 1 : 0, 1]));
    const found = only(cases, { cluster: "pen" });
    const plain = only(cases);
    // Variance m/(m-1) p(1-p)/m: the design effect is 14/13, and both t have 13 degrees of freedom.
    expectClose(found.clusters?.design_effect ?? 0, 14 / 13, 1e-12, "design effect");
    expectClose(found.clusters?.effective_size ?? 0, 13, 1e-12, "effective size");
    expect(plain.notes).toBeUndefined();
  });

  test("without the option shared pens are said, where the pigs stand for a group and pens are recorded", () => {
    const thirty = inPens([
      [5, 10],
      [2, 10],
      [0, 10],
    ]);
    const words =
      "30 pigs from 3 pens are taken as drawn singly: pigs of one pen resemble each other, so the interval is too narrow";
    expect(only(thirty).notes).toEqual([words]);
    expect(only(thirty).wording).toContain(words);
    expect(only([...thirty, one(true)]).notes).toBeUndefined();
    expect(
      only(
        inPens(
          [
            [5, 10],
            [2, 10],
          ],
          (pen) => ({ pen, basis: "clinical" }),
        ),
      ).notes,
    ).toBeUndefined();
  });

  test("the examples beside the limits", () => {
    for (const { case: name, pigs, clusters, shared, few } of clusterLimits.examples)
      expect([sharePens(pigs, clusters), tooFewClusters(clusters)], name).toEqual([shared, few]);
  });

  test("pigs never count for more than they are", () => {
    const pens = fc.array(fc.tuple(fc.nat(6), fc.nat(6)), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(pens, (made) => {
        const counts = made.map(([a, b]): [number, number] => [Math.min(a, b + 1), b + 1]);
        const cases = inPens(counts);
        fc.pre(cases.length > 1);
        const { clusters, lower, upper, proportion } = only(cases, { cluster: "pen" });
        expect(clusters?.number).toBe(counts.length);
        expect(clusters?.effective_size ?? 0).toBeLessThanOrEqual(cases.length);
        expect(lower).toBeLessThanOrEqual((proportion ?? 0) + 1e-12);
        expect(upper).toBeGreaterThanOrEqual((proportion ?? 1) - 1e-12);
      }),
      { numRuns: runs(40) },
    );
  });
});

describe("an eye or a test that errs", () => {
  type Mapped = { true: number } & Record<string, number>;
  const rows = reference<{ x: number; n: number; se: number; sp: number; conf: number }, Mapped>(
    "rogan-gladen",
    14,
  );

  test("known shares: Rogan & Gladen with the interval carried over (R 4.2.2)", () => {
    for (const { input, output } of rows.filter((row) => row.input.n <= 330))
      for (const [interval, name] of [
        ["clopper-pearson", "exact"],
        ["blaker", "blaker"],
      ] as const) {
        const test = { sensitivity: input.se, specificity: input.sp };
        const found = only(sample(input.x, input.n), { test, interval, level: input.conf }).true_prevalence;
        expect(found).toMatchObject({ method: "rogan-gladen", interval, study: null });
        expect(found?.prevalence).toBeCloseTo(output.true, 10);
        expect(found?.lower).toBeCloseTo(output[`${name}Lower`] ?? Number.NaN, 9);
        expect(found?.upper).toBeCloseTo(output[`${name}Upper`] ?? Number.NaN, 9);
      }
  });

  test("23 of 150, Se 96 %, Sp 89 %: 5.1 %, 0 to 12.8 % by Blaker (printed in Reiczigel et al. 2010 as 0-13 %)", () => {
    const found = only(sample(23, 150), {
      test: { sensitivity: 0.96, specificity: 0.89 },
      interval: "blaker",
    });
    expect(found.wording).toContain(
      "corrected for a sensitivity of 96.0 % and a specificity of 89.0 %, taken as known: 5.1 %, 95 % CI 0 to 12.8 %",
    );
    expect(found).toMatchObject({ affected: 23, examined: 150, proportion: 23 / 150 });
  });

  test("6 of 151, Se 96.4 %, Sp 92.7 %: 0, and that fewer are positive than are to be expected of a free herd", () => {
    const found = only(sample(6, 151), { test: { sensitivity: 0.964, specificity: 0.927 } });
    expect(found.true_prevalence?.prevalence).toBe(0);
    expect(found.wording).toContain("fewer are positive than false positives are to be expected");
  });

  test("counts: Lang & Reiczigel (R 4.2.2 and 40-digit arithmetic)", () => {
    type Input = { x: number; n: number; xSe: number; nSe: number; xSp: number; nSp: number; conf: number };
    for (const { input, output } of reference<Input, { lower: number; upper: number }>("lang-reiczigel", 8)) {
      const test: TestAccuracy = {
        sensitivity: { right: input.xSe, of: input.nSe },
        specificity: { right: input.xSp, of: input.nSp },
      };
      const found = only(sample(input.x, input.n), { test, level: input.conf }).true_prevalence;
      expect(found).toMatchObject({ method: "lang-reiczigel", study: test, interval: null });
      close(found?.lower ?? null, output.lower);
      close(found?.upper ?? null, output.upper);
    }
  });

  test("Lang & Reiczigel is withheld, with the reason, where it is narrower than the exact one of the positives", () => {
    const study: TestAccuracy = { sensitivity: { right: 95, of: 100 }, specificity: { right: 98, of: 100 } };
    const found = only(sample(0, 2), { test: study });
    expect(found.true_prevalence).toMatchObject({ prevalence: 0, lower: null, upper: null });
    expect(found.wording).toContain(
      "the corrected interval is withheld: this approximation gives a narrower one",
    );
    // Before they are held within 0 and 1: 2 z SE of the adjusted counts.
    for (let n = 1; n <= 40; n++)
      for (let x = 0; x <= n; x++) {
        const counts = { truePositive: 95, affected: 100, trueNegative: 98, unaffected: 100 };
        const { standardError } = langReiczigelInterval(x, n, counts);
        const { lower, upper } = binomialInterval(x, n);
        const withheld = corrected(x, n, study, { level: 0.95, method: "clopper-pearson" }).lower === null;
        expect(withheld, `${x} of ${n}`).toBe(2 * 1.959963984540054 * standardError < upper - lower);
      }
  });

  test("nothing is said one-sided of an uncorrected 0 of n", () => {
    const found = only(sample(0, 20), { test: { sensitivity: 0.8, specificity: 1 } });
    expect(found.wording).not.toContain("one-sided");
    expectClose(found.true_prevalence?.upper ?? 0, (1 - 0.025 ** (1 / 20)) / 0.8, 1e-10, "upper");
  });

  test("a perfect one changes nothing", () => {
    const found = only(sample(7, 19), { test: { sensitivity: 1, specificity: 1 } });
    expect(found.true_prevalence?.prevalence).toBeCloseTo(7 / 19, 14);
    close(found.true_prevalence?.lower ?? null, found.lower ?? 0, 1e-12);
    close(found.true_prevalence?.upper ?? null, found.upper ?? 0, 1e-12);
  });
});

test("what cannot be had together is refused", () => {
  const test = { sensitivity: 0.9, specificity: 0.98 };
  const refused = (options: HerdOptions) => () => herdEstimates(sample(1, 3), { ...asked, ...options });
  expect(refused({ finite: true, cluster: "pen" })).toThrow(/"finite" and "cluster"/);
  expect(refused({ combine: true, cluster: "pen" })).toThrow(/"combine" and "cluster"/);
  expect(refused({ finite: true, interval: "blaker" })).toThrow(/leave out "interval"/);
  expect(refused({ cluster: "pen", interval: "blaker" })).toThrow(/leave out "interval"/);
  expect(refused({ test, finite: true })).toThrow(/"finite"/);
  expect(refused({ test, cluster: "pen" })).toThrow(/"cluster"/);
  expect(refused({ test, combine: true })).toThrow(/"combine"/);
  expect(refused({ test, indicators: ["pleurisy", "lung-consolidation"] })).toThrow(/name one indicator/);
  expect(refused({ test: { sensitivity: 0.5, specificity: 0.5 } })).toThrow(/above 1/);
});
