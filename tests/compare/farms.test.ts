/** Farms against each other: which pigs stand for a farm, which farm stands out, and what is never said. */
import { describe, expect, it } from "vitest";
import { compareFarms, type FarmsReport, type Ranking } from "../../src/compare/index.ts";
import { farmsCsv, farmsMarkdown, farmsText } from "../../src/formats/compare/farms.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { displayWidth } from "../../src/formats/page/width.ts";
import { herdEstimates } from "../../src/herd/index.ts";
import { archiveOf, farm } from "../herd/archive.ts";
import { affected, type Pig } from "./farm.ts";
import { examplePractice, inPens, practiceOf } from "./practice.ts";

type Farms = Parameters<typeof practiceOf>[0];
const asked = { indicators: ["snout-grade-2-up"] };
const ranked = (farms: Farms, options = {}, head = 300): FarmsReport =>
  compareFarms(archiveOf(practiceOf(farms, head)), { ...asked, ...options });
const only = ({ rankings: [one, ...more] }: FarmsReport): Ranking => {
  if (one === undefined || more.length > 0) throw new Error("not one ranking");
  return one;
};
const textOf = (report: FarmsReport): string => farmsText(report, makeStyle(false));
const flat = (report: FarmsReport): string => textOf(report).replaceAll(/\s+/g, " ");
/** One visit each, drawn singly. */
const farms = (counts: Readonly<Record<string, readonly [number, number, Partial<Pig>?]>>): Farms =>
  Object.fromEntries(
    Object.entries(counts).map(([name, [yes, of, some]]) => [
      name,
      { "2026-09-01": affected(yes, of, some) },
    ]),
  );
const six = {
  alder: [3, 30],
  cedar: [6, 30],
  elm: [4, 30],
  hazel: [2, 30],
  larch: [5, 30],
} as const;

describe("which pigs stand for a farm", () => {
  const report = ranked(examplePractice);
  const { farms: rows, others } = only(report);

  it("those of the latest visit whose pigs were drawn at random", () => {
    expect(rows.map(({ farm, date, affected: yes, examined }) => [farm, date, yes, examined])).toEqual([
      ["birch", "2026-08-24", 24, 30],
      ["oak", "2026-08-17", 9, 30],
      ["cedar", "2026-09-03", 6, 30],
      ["larch", "2026-07-20", 5, 30],
      ["elm", "2026-06-11", 3, 20],
      ["alder", "2026-09-01", 4, 30],
      ["hazel", "2026-09-08", 2, 25],
      ["maple", "2026-08-12", 0, 12],
    ]);
  });

  it("ill pigs are told apart, as of these pigs, without share or interval", () => {
    expect(others).toEqual([
      {
        farm: "rowan",
        visit: "rowan-2026-07-02",
        date: "2026-07-02",
        basis: "clinical",
        affected: 4,
        examined: 6,
        not_examined: 0,
        why: null,
      },
    ]);
    expect(textOf(report)).toContain("- rowan, 2026-07-02: 4 of 6 of these pigs, chosen for signs\n");
  });

  it("an older visit when it is asked for", () => {
    const older = ranked(examplePractice, { where: { visit: ["alder-2026-03-02", "birch-2026-08-24"] } });
    expect(only(older).farms.map(({ farm, affected: yes }) => [farm, yes])).toEqual([
      ["birch", 24],
      ["alder", 20],
    ]);
  });

  it("a whole group is known exactly; one that lacks pigs, one pig and an unread farm are not ranked", () => {
    const whole = { ...six, oak: [6, 30, { basis: "complete" }] } as const;
    const known = only(ranked(farms(whole), {}, 30)).farms.find(({ farm }) => farm === "oak");
    expect([known?.share, known?.lower, known?.upper]).toEqual([0.2, null, null]);
    const lacking = only(ranked(farms({ ...whole, ash: [1, 1], yew: [0, 0] }), {}, 31));
    expect(lacking.farms).toHaveLength(5);
    expect(lacking.others.map(({ farm }) => farm)).toEqual(["ash", "oak"]);
    expect(lacking.others[1]?.why).toContain("of this whole group there are 30 cases");
    const unread = ranked({ ...farms(six), yew: { "2026-09-01": [{ grade: null }, { grade: null }] } });
    expect(flat(unread)).toContain("yew, 2026-09-01: read in none of 2");
  });

  it("several groups weigh by their head counts, as in herd; without head counts the farm is not ranked", () => {
    const rooms = [...affected(8, 10), ...affected(2, 20, { group: "nursery-2" })];
    const files = practiceOf({ ...farms(six), oak: { "2026-09-01": rooms } });
    const known = { ...farm("oak"), groups: { "nursery-1": { head: 300 }, "nursery-2": { head: 100 } } };
    const cases = archiveOf({ ...files, "practice/oak/farm.yaml": known }).cases;
    const oak = only(compareFarms(cases, asked)).farms.find(({ farm }) => farm === "oak");
    const [herd] = herdEstimates(
      cases.filter((one) => one.farm?.id === "oak"),
      { ...asked, by: ["visit"] },
    ).estimates;
    expect(oak?.share).toBeCloseTo(0.75 * 0.8 + 0.25 * 0.1, 12);
    expect([oak?.share, oak?.lower, oak?.upper]).toEqual([herd?.proportion, herd?.lower, herd?.upper]);
    expect(oak?.counted_as).toBe(Math.floor((herd?.effective_size ?? 0) + 1e-9));
    const unknown = only(compareFarms(archiveOf({ ...files, "practice/oak/farm.yaml": farm("oak") }), asked));
    expect(unknown.others.map(({ farm, why }) => [farm, why])).toEqual([
      ["oak", "neither visit.yaml nor farm.yaml says how many pigs are in nursery-1"],
    ]);
  });

  it("age classes stand apart, and every p allows for all of them", () => {
    const old = { age: "170 d" };
    const both = Object.fromEntries(
      Object.entries(six).map(([name, [yes, of]]) => [
        name,
        { "2026-09-01": [...affected(yes, of), ...affected(yes, 10, old)] },
      ]),
    );
    const report = ranked({ ...both, birch: { "2026-09-01": affected(27, 30) } });
    expect(report.rankings.map(({ age_class, farms: rows }) => [age_class, rows.length])).toEqual([
      ["weaner", 6],
      ["finisher", 5],
    ]);
    expect(report.adjustment.tests).toBe(11);
    expect(report.answer).toMatch(/^Weaner: birch stands out .* allowing for 11 tests\)\.$/);
  });
});

describe("which farm stands out", () => {
  it("the one that neither chance among equal farms nor the spread of the others accounts for", () => {
    const report = ranked(examplePractice);
    const out = only(report).farms.filter(({ stands_out }) => stands_out !== null);
    expect(out.map(({ farm, stands_out }) => [farm, stands_out])).toEqual([["birch", "more"]]);
    expect(report.answer).toMatch(
      /^birch stands out among 8 farms in snout grade 2 or more: more of its pigs are affected \(24 of 30, p 0\.\d+ allowing for 8 farms\)\.$/,
    );
    expect(
      only(
        ranked(
          farms({
            ...six,
            alder: [29, 30],
            cedar: [28, 30],
            elm: [30, 30],
            hazel: [29, 30],
            larch: [28, 30],
            birch: [5, 30],
          }),
        ),
      ).answer,
    ).toContain("fewer of its pigs are affected (5 of 30");
  });

  it("none where farms differ as much as all do: those that differ are told in brackets", () => {
    const apart = farms({ a: [2, 30], b: [7, 30], c: [12, 30], d: [17, 30], e: [22, 30], f: [27, 30] });
    const report = ranked(apart);
    const [highest] = only(report).farms;
    expect(highest?.p_together).toBeLessThan(0.001);
    expect(highest?.p_spread).toBeGreaterThan(0.05);
    expect(report.answer).toBe(
      "No farm stands out from the spread of the others among 6 farms in snout grade 2 or more: from 2 of 30 in a to 27 of 30 in f. But they differ by more than chance: f and e have more, b and a have fewer than the others together (allowing for 6 farms).",
    );
    expect(textOf(report)).toMatch(/^ {2}f .* \(more\)$/m);
    expect(flat(report)).toContain("In brackets: differs from all other farms together");
    expect(ranked(farms(six)).answer).toBe(
      "No farm was shown to stand out among 5 farms in snout grade 2 or more: from 2 of 30 in hazel to 6 of 30 in cedar. That is no proof that they are alike.",
    );
  });

  it("nothing with four farms: that takes five", () => {
    const report = ranked(farms({ a: [0, 30], b: [1, 30], c: [2, 30], d: [30, 30] }));
    expect(report.answer).toBe(
      "4 farms are too few to say which stands out in snout grade 2 or more: from 0 of 30 in a to 30 of 30 in d. That takes 5.",
    );
    expect(
      only(report).farms.every(
        ({ p, likely, stands_out }) => p === null && likely === null && stands_out === null,
      ),
    ).toBe(true);
  });

  it("counts pens: the same pigs from few pens do not stand out, and fewer than five pens are not judged", () => {
    const singly = only(ranked({ ...farms(six), birch: { "2026-09-01": affected(18, 30) } }));
    const alike = only(
      ranked({ ...farms(six), birch: { "2026-09-01": inPens([6, 6], [6, 6], [6, 6], [0, 6], [0, 6]) } }),
    );
    expect([singly.farms[0]?.stands_out, alike.farms[0]?.stands_out]).toEqual(["more", null]);
    expect(singly.farms[0]?.counted_as).toBe(30);
    expect(alike.farms[0]?.counted_as).toBeLessThan(6);
    expect(alike.farms[0]?.method).toBe("korn-graubard");
    const few = ranked({ ...farms(six), birch: { "2026-09-01": inPens([10, 10], [10, 10], [10, 10]) } });
    expect(only(few).farms[0]).toMatchObject({ farm: "birch", p: null, not_judged: "3 pens are too few" });
    expect(flat(few)).toContain("Not judged: birch, 3 pens are too few.");
    const each = ranked(
      { ...farms(six), birch: { "2026-09-01": inPens([10, 10], [10, 10], [10, 10]) } },
      { cluster: "none" },
    );
    expect(only(each).farms[0]?.stands_out).toBe("more");
  });

  it("draws few pigs further towards the others than many", () => {
    const { farms: rows } = only(ranked(farms({ ...six, oak: [4, 5], birch: [24, 30] })));
    const [oak, birch] = ["oak", "birch"].map((name) => rows.find(({ farm }) => farm === name)?.likely ?? 0);
    expect(oak).toBeLessThan(birch ?? 0);
    for (const { likely } of rows) expect(likely).not.toBeNull();
  });
});

describe("what may be compared", () => {
  it("refuses another place, tells another examiner and ages that lie apart", () => {
    const place = ranked(farms({ ...six, oak: [9, 30, { manner: "slaughtered" }] }));
    expect(only(place).farms).toEqual([]);
    expect(place.answer).toContain(
      "The farms are not ranked in snout grade 2 or more: other place of examination",
    );
    const reader = ranked(farms({ ...six, oak: [9, 30, { examiner: "J. Teal" }] }));
    expect(only(reader).farms).toHaveLength(6);
    expect(flat(reader)).toContain("Other examiner: in alder H. Marlow;");
    expect(flat(reader)).not.toContain("Median age");
    const young = ranked(farms({ ...six, oak: [9, 30, { age: "29 d" }], yew: [1, 9, { age: "79 d" }] }));
    expect(flat(young)).toContain("Median age of weaner pigs: 50 d in alder,");
    expect(flat(young)).toContain("More than three weeks apart");
  });

  it("wants two farms, and names that exist", () => {
    expect(() => ranked(farms({ alder: [1, 3] }))).toThrow("the folder that holds the farms");
    expect(() => ranked(farms(six), { indicators: ["snout"] })).toThrow("snout-grade-2-up");
    expect(ranked(farms({ alder: [1, 3], rowan: [1, 3, { basis: "clinical" }] })).answer).toBe(
      "The farms are not ranked in snout grade 2 or more: only alder has pigs drawn at random, or a whole group, in which it was read.",
    );
  });
});

describe("every format", () => {
  const reports = [
    ranked(examplePractice),
    ranked({ ...farms(six), "a-farm-with-a-very-long-name-on-the-hill": { "2026-09-01": affected(30, 30) } }),
    ranked(farms(six), { indicators: undefined }),
  ];

  it("says no prevalence, gives no number over farms, and keeps to 80 columns", () => {
    for (const report of reports) {
      const texts = [textOf(report), farmsMarkdown(report), farmsCsv(report), JSON.stringify(report)];
      for (const text of texts) expect(text).not.toMatch(/prevalence/i);
      for (const line of textOf(report).split("\n")) expect(displayWidth(line)).toBeLessThanOrEqual(80);
      for (const { farms: rows } of report.rankings) {
        const sum = (of: (one: (typeof rows)[number]) => number) =>
          rows.reduce((all, one) => all + of(one), 0);
        const [yes, all] = [sum(({ affected: x }) => x), sum(({ examined }) => examined)];
        expect(textOf(report)).not.toContain(`${yes} of ${all}`);
      }
    }
  });

  it("has a line a farm as CSV, and the answers alone when quiet", () => {
    const [report] = reports;
    if (report === undefined) throw new Error("no report");
    const [head, ...rows] = farmsCsv(report).trimEnd().split("\r\n");
    expect(rows).toHaveLength(9);
    for (const row of rows) expect(row.split(",")).toHaveLength(head?.split(",").length ?? 0);
    const quiet = farmsText(report, makeStyle(false), true).replaceAll(/\s+/g, " ").trim();
    expect(quiet).toBe(report.answer);
  });
});
