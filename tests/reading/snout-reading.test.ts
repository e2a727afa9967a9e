/** The reading of a herd's snouts: the examples of the data file, and what is never said. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { snoutReadingRules as rules } from "../../src/knowledge/index.ts";
import {
  type Snout,
  type SnoutFacts,
  snoutReading,
  statementsOf,
  type ToxinTest,
} from "../../src/reading/index.ts";
import { archiveOf, visit } from "../herd/archive.ts";
import { runs } from "../random.ts";

type Example = (typeof rules)["examples"][number];

/** Case and visit files of an example, read by the real reader. */
function archive({ snouts, ammonia, dust, tests = [], other_tests: others = [] }: Example) {
  const environment = [
    {
      group: "a",
      ...(ammonia !== undefined && { ammonia: `${ammonia} ppm` }),
      ...(dust !== undefined && { dust: `${dust} mg/m3` }),
    },
  ];
  const pigs = snouts.map(({ grade, ventral, jaw, age, slaughtered }, index) => [
    `v/pig-${index}.yaml`,
    {
      format: 1,
      case: `pig-${index}`,
      selection: { basis: "clinical" },
      ...(age !== undefined && { pig: { age: `${age} d` } }),
      ...(slaughtered && { death: { manner: "slaughtered" } }),
      ...(jaw !== undefined && { external: { snout: { brachygnathia: `${jaw} mm` } } }),
      respiratory: {
        turbinates: {
          section: "premolar-1",
          ...(ventral !== undefined && { left: { ventral } }),
          ...(grade !== undefined && { grades: { "maff-1978": grade } }),
        },
      },
    },
  ]);
  return archiveOf({
    "v/visit.yaml": {
      ...visit("v-1", "2026-03-14"),
      ...(ammonia !== undefined || dust !== undefined ? { environment } : {}),
      tests: [
        ...tests.map((result) => ({
          test: "toxin-gene",
          result,
          ...(result !== "pending" && { at: "2026-03-20", from: "nasal swabs of six pigs" }),
        })),
        ...others.map((other) => ({ test: "toxin-gene", ...other })),
      ],
    },
    ...Object.fromEntries(pigs),
  });
}

describe("the examples of the data file", () => {
  it.each(rules.examples.map((example) => [example.case, example] as const))("%s", (_, example) => {
    const [reading, ...more] = snoutReading(archive(example));
    expect(more).toEqual([]);
    expect(reading?.statements.map(({ id }) => id).filter((id) => id !== "chosen")).toEqual(example.says);
    expect(reading?.snouts).toBe(example.snouts.length);
    for (const { text, source } of reading?.statements ?? []) {
      expect(text).not.toMatch(/[{}]|undefined|NaN/);
      expect(source.length).toBeGreaterThan(5);
    }
  });

  it("use every statement, so that none is untried", () => {
    const said = new Set([...rules.examples.flatMap(({ says }) => says), "chosen"]);
    expect([...said].sort()).toEqual(Object.keys(rules.statements).sort());
  });
});

describe("a visit", () => {
  const record = (turbinates: unknown) => ({ format: 1, case: "x", respiratory: { turbinates } });
  const readings = (turbinates: unknown) =>
    snoutReading(archiveOf({ "v/visit.yaml": visit("v", "2026-03-14"), "v/x.yaml": record(turbinates) }));

  it("without an examined snout has no reading", () => {
    expect(readings(null)).toEqual([]);
    expect(readings({ not_examined: "head gone" })).toEqual([]);
    expect(readings({ not_assessable: { because: "damaged" } })).toEqual([]);
    expect(readings({ section: "rostral-to-premolar-1", left: { ventral: 4 } })).toEqual([]);
  });

  it("reads the highest air readings, and says how the pigs were chosen", () => {
    const [reading] = snoutReading(
      archive({ case: "", snouts: [{ grade: 1 }], ammonia: 28, dust: 3, says: [] }),
    );
    expect(reading).toMatchObject({
      visit: "v-1",
      snouts: 1,
      severe: 0,
      ammonia_ppm: 28,
      dust_mg_per_m3: 3,
      tests: [],
      tests_not_used: [],
    });
    expect(reading?.statements.find(({ id }) => id === "chosen")?.text).toMatch(/^1 snouts?, .+: .+\.$/);
  });
});

describe("a test for the toxin gene", () => {
  const readingOf = (test: Record<string, string>) =>
    snoutReading(
      archive({ case: "", snouts: [{ grade: 4 }], other_tests: [{ result: "positive", ...test }], says: [] }),
    )[0];

  it.each([
    [{ at: "2026-03-14", from: "tonsil swab" }],
    [{ at: "2026-04-02", from: "Nasal swabs, 6 weaners" }],
    [{ at: "2026-03-20", from: "concha tissue" }],
    [{ at: "2026-03-20", from: "Nasentupfer von sechs Absetzern" }],
  ])("is used: %j", (test) => {
    expect(readingOf(test)).toMatchObject({ tests: ["positive"], tests_not_used: [] });
  });

  it.each([
    [{ from: "nasal swabs" }, "the day of the result is not written (at)"],
    [{ at: "2026-03-20" }, "it is not written what was sampled (from)"],
    [
      { at: "2026-03-13", from: "nasal swabs" },
      "its result of 2026-03-13 is older than the visit of 2026-03-14",
    ],
    [{ at: "2026-03-20", from: "lung swab" }, 'it came from "lung swab" and not from'],
    [
      { at: "2026-03-20", from: "lungs, no nasal swabs" },
      'it came from "lungs, no nasal swabs" and not from',
    ],
    [{}, "(at) and it is not written what"],
  ])("is not used, and it says why: %j", (test, why) => {
    const reading = readingOf(test);
    expect(reading?.tests).toEqual([]);
    expect(reading?.tests_not_used[0]?.why).toContain(why);
    expect(reading?.statements.map(({ text }) => text).join(" ")).toContain(why);
    expect(reading?.statements.map(({ id }) => id)).not.toContain("progressive");
  });

  it("that is pending needs no day", () => {
    expect(readingOf({ result: "pending" })).toMatchObject({ tests: ["pending"], tests_not_used: [] });
  });
});

const snout: fc.Arbitrary<Snout> = fc.record({
  grade: fc.option(fc.integer({ min: 0, max: 5 }), { nil: undefined }),
  loss: fc.boolean(),
  severe: fc.subarray([
    ...rules.severe.scores.filter(({ outside }) => !outside).map(({ words }) => words),
    rules.severe.ventral_concha.words,
  ]),
  outside: fc.subarray(rules.severe.scores.filter(({ outside }) => outside).map(({ words }) => words)),
  ageDays: fc.option(fc.integer({ min: 0, max: 2000 }), { nil: undefined }),
  slaughtered: fc.boolean(),
  basis: fc.constantFrom(null, "clinical", "random", "complete"),
});
const toxinTest = (results: readonly ToxinTest["result"][]): fc.Arbitrary<ToxinTest> =>
  fc.record({
    result: fc.constantFrom(...results),
    unused: fc.option(fc.constant("its day is not written"), { nil: undefined }),
  });
const facts = (tests: fc.Arbitrary<ToxinTest>): fc.Arbitrary<SnoutFacts> =>
  fc.record({
    snouts: fc.array(snout, { maxLength: 12 }),
    ammonia: fc.option(fc.double({ min: 0, max: 200, noNaN: true }), { nil: undefined }),
    dust: fc.option(fc.double({ min: 0, max: 50, noNaN: true }), { nil: undefined }),
    tests: fc.array(tests, { maxLength: 5 }),
  });
/** Positive results that do not count, and others. */
const noPositive = fc.oneof(
  toxinTest(["negative", "pending"]),
  fc.constant<ToxinTest>({ result: "positive", unused: "it came from a lung" }),
);

/** The one hedge in which the word may stand without a result. */
const hedge = "consistent with progressive atrophic rhinitis; only a test for the toxin settles it.";

describe("progressive", () => {
  it("is never said without a positive test for the toxin gene, whatever the loss and the air", () => {
    fc.assert(
      fc.property(facts(noPositive), (herd) => {
        const said = statementsOf(herd);
        expect(said.map(({ id }) => id)).not.toContain("progressive");
        for (const { text } of said) expect(text.replace(hedge, "")).not.toMatch(/progressive/i);
      }),
      { numRuns: runs(500) },
    );
  });

  it("and the test is named, unless there is a result", () => {
    fc.assert(
      fc.property(facts(toxinTest(["negative", "pending", "positive"])), (herd) => {
        const ids = statementsOf(herd).map(({ id }) => id);
        const used = herd.tests.filter(({ unused }) => unused === undefined).map(({ result }) => result);
        const found = used.includes("positive");
        expect(ids.includes("test")).toBe(used.every((result) => result === "pending"));
        expect(ids.includes("toxin-found")).toBe(found);
        const wasted = herd.snouts.some((one) => one.severe.length > 0);
        const outside = herd.snouts.some((one) => one.outside.length > 0);
        expect(ids.includes("progressive")).toBe(wasted && found);
        expect(ids.includes("jaw-and-toxin")).toBe(!wasted && outside && found);
        expect(ids.includes("consistent")).toBe((wasted || outside) && !found);
        expect(ids.filter((id) => id === "test-not-used").length).toBe(herd.tests.length - used.length);
        const normal = herd.snouts.some((one) => !one.loss) && !wasted && !outside;
        expect(ids.includes("normal-does-not-exclude")).toBe(normal);
        expect(ids.includes("not-graded")).toBe(herd.snouts.length === 0);
      }),
      { numRuns: runs(500) },
    );
  });

  it("stands in no other sentence of the data file as a statement", () => {
    const allowed = ["consistent", "progressive", "toxin-found"];
    for (const [id, { text }] of Object.entries(rules.statements))
      if (!allowed.includes(id)) expect(text, id).not.toMatch(/progressive/i);
    expect(rules.statements.consistent?.text).toContain(hedge);
  });

  it("air is reported without being named as the cause", () => {
    for (const id of ["ammonia", "ammonia-low", "ammonia-limit", "dust"])
      expect(rules.statements[id]?.text, id).not.toMatch(/\bbecause|due to|caused by|is the cause\b/i);
  });
});
