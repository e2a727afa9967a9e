/** The answer first, on one page: visits of the size that a practice brings home, through the commands as they are typed. */
import { describe, expect, it } from "vitest";
import { displayWidth } from "../../src/formats/page/width.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { carcase } from "../end-to-end/run.ts";
import { consolidation } from "../score/pigs.ts";

const yaml = (content: object): string => JSON.stringify(content);

/** A visit of so many pigs; the cases by their number. */
function visitOf(cases: readonly object[], { groups = {}, question = {} } = {}): string {
  const folder = temporaryFolder();
  put(folder, {
    "carcase.yaml": yaml({ format: 1 }),
    "farm.yaml": yaml({ format: 1, farm: "rowan-farm", groups }),
    "2026-05-04/visit.yaml": yaml({ format: 1, visit: "rowan-2026-05-04", date: "2026-05-04", ...question }),
    ...Object.fromEntries(
      cases.map((one, index) => [
        `2026-05-04/p${index + 1}.yaml`,
        yaml({ format: 1, case: `p${index + 1}`, ...one }),
      ]),
    ),
  });
  return folder;
}

const linesOf = (args: readonly string[]): string[] => {
  const { code, out, err } = carcase([...args]);
  expect([code, err]).toEqual([0, ""]);
  return out.trimEnd().split("\n");
};

/** Pigs of three groups chosen in three ways; each organ that ships with an indicator is described. */
const opened = Array.from({ length: 26 }, (_, index) => ({
  pig: {
    group: ["nursery-1", "nursery-2", "finisher-1"][index % 3],
    age: index % 3 === 2 ? "150 d" : "55 d",
  },
  selection: { basis: index < 18 ? "random" : index < 23 ? "clinical" : "comparison" },
  respiratory: {
    turbinates: {
      section: "premolar-1",
      left: { dorsal: index % 3, ventral: index % 4 },
      right: { dorsal: 0, ventral: index % 3 },
      septum: index % 5 === 0 ? "slight" : "straight",
      grades: { "maff-1978": index % 4, "embrapa-1993": index % 3 },
    },
    lungs: { consolidation: consolidation({ left_cranial: (index % 5) * 20, right_middle: index % 2 }) },
    pleura: { pleurisy: { left: index % 6 === 0 ? ["cranioventral"] : "none", right: "none" } },
  },
}));
const groups = { "nursery-1": { head: 210 }, "nursery-2": { head: 190 }, "finisher-1": { head: 180 } };

/** Three grades of the line, by their scales; one pluck was lost. */
const slaughtered = Array.from({ length: 30 }, (_, index) => ({
  pig: { group: "batch", age: "170 d" },
  protocol: "slaughter-check",
  death: { manner: "slaughtered" },
  selection: { basis: "random" },
  respiratory: {
    turbinates: { section: "premolar-1", grades: { "maff-1978": index % 5 } },
    lungs:
      index === 6 ? { not_examined: "lost on the line" } : { grades: { "madec-kobisch-1982": index % 9 } },
    pleura: { grades: { "dottori-2007": index % 3 } },
  },
}));

describe("herd", () => {
  it("fits 26 pigs of one visit into 60 lines of 80 columns, the answer first", () => {
    const lines = linesOf(["herd", visitOf(opened, { groups })]);
    expect(lines.length).toBeLessThanOrEqual(60);
    expect(lines.filter((line) => displayWidth(line) > 80)).toEqual([]);
    expect(lines.slice(0, 2).join("\n")).toMatch(
      /^rowan-2026-05-04 \(26 pigs\)\n {2}Snout grade 2 or more\*: \d+ of 18 \(drawn at random\), so /,
    );
    expect(lines.join("\n")).toContain("More with --all:");
  });

  it("fits the example farm, two visits of 26 pigs together, into 60 lines", () => {
    expect(linesOf(["herd", "cases-example/alder-farm"]).length).toBeLessThanOrEqual(60);
  });

  it("tells first what the visit asked, and says what one visit cannot", () => {
    const question = { question: { indicator: "pleurisy", direction: "fewer" } };
    const [, first = "", ...rest] = linesOf(["herd", "-q", visitOf(opened, { groups, question })]);
    expect(first).toMatch(/^ {2}Asked: Any chronic pleurisy\*: /);
    const said = rest.join(" ").replaceAll(/\s+/g, " ");
    expect(said).toContain(
      "asked was whether fewer have it than on the visit before, which carcase compare answers",
    );
  });

  it("says only the answers with -q, and everything with --all", () => {
    const folder = visitOf(opened, { groups });
    const [quiet, plain, all] = [["-q"], [], ["--all"]].map((args) => linesOf(["herd", ...args, folder]));
    expect(quiet?.length).toBeLessThan(20);
    expect(plain?.slice(0, 3)).toEqual(quiet?.slice(0, 3));
    expect(all?.length).toBeGreaterThan(2 * (plain?.length ?? 0));
    expect(all).toContain("Sources");
  });

  it("takes the scale that the settings name first, if it was recorded", () => {
    const folder = visitOf(opened, { groups });
    const shown = (scales: readonly string[]): string => {
      put(folder, { "carcase.yaml": yaml({ format: 1, scales }) });
      return linesOf(["herd", folder]).join("\n");
    };
    expect(shown(["embrapa-1993", "shipped"])).toMatch(/ snout 0-3 /);
    expect(shown(["done-1984", "polloni-2018", "shipped"])).toMatch(/ snout 0-18\* /);
    expect(shown(["embrapa-1993", "shipped"])).not.toMatch(/ snout 0-5\* /);
  });
});

describe("score", () => {
  it("fits 30 slaughter pigs with three scales into 50 lines of 80 columns", () => {
    const lines = linesOf(["score", visitOf(slaughtered)]);
    expect(lines.length).toBeLessThanOrEqual(50);
    expect(lines.filter((line) => displayWidth(line) > 80)).toEqual([]);
    expect(lines[1]).toMatch(/^ {2}Snout grade 0-5\*: graded in 30 of 30 pigs, median 2 \(0 to 4\)/);
    expect(lines.filter((line) => line.includes("5 scales on which no pig has a score"))).toHaveLength(1);
    expect(lines.filter((line) => line.includes("not examined"))).toEqual([
      "  p7, madec-kobisch-1982: not examined: lost on the line",
    ]);
  });

  it("sorts p1, p2, p10", () => {
    const named = linesOf(["score", visitOf(slaughtered)]).flatMap(
      (line) => /^ {2}(p\d+) /.exec(line)?.[1] ?? [],
    );
    expect(named).toEqual(slaughtered.map((_, index) => `p${index + 1}`));
  });

  it("groups a reason that many pigs share, and says only the sentences with -q", () => {
    const closed = slaughtered.map((one, index) =>
      index < 20
        ? { ...one, respiratory: { ...one.respiratory, turbinates: { section: "premolar-1" } } }
        : one,
    );
    const folder = visitOf(closed);
    const lines = linesOf(["score", folder]);
    expect(lines.filter((line) => line.includes("maff-1978: missing"))).toHaveLength(1);
    expect(lines.join(" ")).toContain("p1, p2, p3, p4, p5 and 15 more, maff-1978");
    expect(linesOf(["score", "-q", folder]).length).toBeLessThan(8);
  });
});
