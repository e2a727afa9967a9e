/** The reading of a herd's snouts: the examples of the data file, and what is never said. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { snoutReadingRules as rules } from "../../src/knowledge/index.ts";
import { type Snout, type SnoutFacts, snoutReading, statementsOf } from "../../src/reading/index.ts";
import { archiveOf, visit } from "../herd/archive.ts";

type Example = (typeof rules)["examples"][number];

/** Case and visit files of an example, read by the real reader. */
function archive({ snouts, ammonia, dust, tests = [] }: Example) {
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
      tests: tests.map((result) => ({ test: "toxin-gene", result })),
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
    });
    expect(reading?.statements.find(({ id }) => id === "chosen")?.text).toMatch(/^1 snouts?, .+: .+\.$/);
  });
});

const snout: fc.Arbitrary<Snout> = fc.record({
  grade: fc.option(fc.integer({ min: 0, max: 5 }), { nil: undefined }),
  loss: fc.boolean(),
  severe: fc.subarray([...rules.severe.scores.map(({ words }) => words), rules.severe.ventral_concha.words]),
  ageDays: fc.option(fc.integer({ min: 0, max: 2000 }), { nil: undefined }),
  slaughtered: fc.boolean(),
  basis: fc.constantFrom(null, "clinical", "random", "complete"),
});
const facts = (results: readonly SnoutFacts["tests"][number][]): fc.Arbitrary<SnoutFacts> =>
  fc.record({
    snouts: fc.array(snout, { minLength: 1, maxLength: 12 }),
    ammonia: fc.option(fc.double({ min: 0, max: 200, noNaN: true }), { nil: undefined }),
    dust: fc.option(fc.double({ min: 0, max: 50, noNaN: true }), { nil: undefined }),
    tests: fc.array(fc.constantFrom(...results), { maxLength: 5 }),
  });

/** The one hedge in which the word may stand without a result. */
const hedge = "consistent with progressive atrophic rhinitis; only a test for the toxin settles it.";

describe("progressive", () => {
  it("is never said without a positive test for the toxin gene, whatever the loss and the air", () => {
    fc.assert(
      fc.property(facts(["negative", "pending"]), (herd) => {
        const said = statementsOf(herd);
        expect(said.map(({ id }) => id)).not.toContain("progressive");
        for (const { text } of said) expect(text.replace(hedge, "")).not.toMatch(/progressive/i);
      }),
      { numRuns: 500 },
    );
  });

  it("and the test is named, unless there is a result", () => {
    fc.assert(
      fc.property(facts(["negative", "pending", "positive"]), (herd) => {
        const ids = statementsOf(herd).map(({ id }) => id);
        const settled = herd.tests.some((result) => result !== "pending");
        expect(ids.includes("test")).toBe(!settled);
        expect(ids.includes("toxin-found")).toBe(herd.tests.includes("positive"));
        const severe = herd.snouts.some((one) => one.severe.length > 0);
        expect(ids.includes("progressive")).toBe(severe && herd.tests.includes("positive"));
        expect(ids.includes("consistent")).toBe(severe && !herd.tests.includes("positive"));
      }),
      { numRuns: 500 },
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
