/** A herd class from few heads says so; grades that are names have no mean; the mark of memory belongs to what was computed. */
import { describe, expect, it, test } from "vitest";
import { herdMarkdown, herdText } from "../../src/formats/herd/document.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { groupScores, herdIndices } from "../../src/herd/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { scaleNamed } from "../score/pigs.ts";
import { archiveOf } from "./archive.ts";

const of = (pigs: number, basis: string | null = "random", scale = "embrapa-1993") =>
  herdIndices(scaleNamed(scale), Array<number>(pigs).fill(1), { basis, slaughtered: true })[0];

describe("a class of a herd from few snouts", () => {
  it.each([1, 2, 19])("stands for %d pigs, with a caution that names the number and who says so", (pigs) => {
    const index = of(pigs);
    expect(index?.class).toBe("moderately to severely affected");
    expect(index?.caution).toContain(
      `from ${pigs} pig${pigs === 1 ? "" : "s"}; the method asks for 20 to 30 heads`,
    );
    expect(index?.caution).toContain("Goodwin 1988");
  });

  it("has none from 20 heads on, without a class, or where no number is known", () => {
    expect(of(20)).not.toHaveProperty("caution");
    expect(of(3, "clinical")).toMatchObject({ class: null });
    expect(of(3, "clinical")).not.toHaveProperty("caution");
    expect(of(3, "random", "madec-kobisch-1982")).not.toHaveProperty("caution");
  });

  it("says so in text and Markdown", () => {
    const archive = archiveOf(
      Object.fromEntries(
        ["a", "b"].map((id) => [
          `${id}.yaml`,
          {
            format: 1,
            case: id,
            selection: { basis: "random" },
            respiratory: { turbinates: { section: "premolar-1", grades: { "embrapa-1993": 2 } } },
          },
        ]),
      ),
    );
    const report = { estimates: [], scores: groupScores(archive, { by: [], scales: ["embrapa-1993"] }) };
    const words = "from 2 pigs; the method asks for 20 to 30 heads";
    expect(herdText(report, makeStyle(false), { all: true }).replaceAll(/\s+/g, " ")).toContain(words);
    expect(herdMarkdown(report, { all: true }).replaceAll(/\s+/g, " ")).toContain(words);
  });

  it("asks for no fewer than its words say", () => {
    for (const { id, fewest_pigs: fewest } of scales.values())
      if (fewest !== undefined) expect(fewest.words, id).toContain(String(fewest.value));
  });
});

const carcass = (id: string, grade: number) => ({
  format: 1,
  case: id,
  selection: { basis: "random" },
  external: { subcutis: { grades: { "carcass-abscess": grade } } },
});

describe("grades that are names", () => {
  const archive = archiveOf(
    Object.fromEntries([0, 2, 4, 4].map((grade, index) => [`${index}.yaml`, carcass(`c${index}`, grade)])),
  );
  const scores = groupScores(archive, { by: [], scales: ["carcass-abscess"] });
  const [one] = scores;

  it("are counted, and have no middle and no order", () => {
    expect(one).toMatchObject({
      n: 4,
      nominal: true,
      mean: null,
      median: null,
      q1: null,
      q3: null,
      min: null,
      max: null,
      affected: { pigs: 3, mean: null },
      distribution: [
        { value: 0, count: 1 },
        { value: 2, count: 1 },
        { value: 4, count: 2 },
      ],
      indices: [{ id: "carcasses-with-abscess", value: 0.75 }],
    });
    expect(one).not.toHaveProperty("at_or_above");
  });

  it("are printed without a mean, and it says why", () => {
    const text = herdText({ estimates: [], scores }, makeStyle(false), { all: true });
    expect(text).toMatch(/size classes +4 +– +– +– +0:1 2:1 4:2/);
    expect(text.replaceAll(/\s+/g, " ")).toContain("the grades are names without an order");
    expect(herdMarkdown({ estimates: [], scores }, { all: true })).toContain(
      "the grades are names without an order",
    );
  });

  it("have shares only as figures of the herd, on every scale that ships", () => {
    const nominal = [...scales.values()].filter((scale) => scale.nominal);
    expect(nominal.map(({ id }) => id).sort()).toEqual(["carcass-abscess", "valros-2020"]);
    for (const { indices = [] } of nominal)
      for (const { statistic } of indices) expect(statistic).toBe("share");
  });
});

test("scores that are all written down as grades do not carry the mark of a formula that was not used", () => {
  const lung = (id: string, entry: object) => ({ format: 1, case: id, respiratory: { lungs: entry } });
  const whole = Object.fromEntries(
    [
      "left_cranial",
      "left_middle",
      "left_caudal",
      "right_cranial",
      "right_middle",
      "right_caudal",
      "accessory",
    ].map((lobe) => [lobe, 0]),
  );
  const graded = { grades: { "german-rule-lungs": 1 } };
  const confidence = (second: object) =>
    groupScores(archiveOf({ "a.yaml": lung("a", graded), "b.yaml": lung("b", second) }), {
      by: [],
      scales: ["german-rule-lungs"],
    })[0]?.confidence;
  expect(confidence(graded)).toBe("verified");
  expect(confidence({ consolidation: whole })).toBe("from-memory");
});

test("ratios keep their digits in the table of a group", () => {
  const snout = (id: string, total: number) => ({
    format: 1,
    case: id,
    respiratory: { turbinates: { section: "premolar-1", measured: { concha_area_fraction: { total } } } },
  });
  const archive = archiveOf({ "a.yaml": snout("a", 0.38), "b.yaml": snout("b", 0.42) });
  const scores = groupScores(archive, { by: [], scales: ["collins-1989-area"] });
  expect(herdText({ estimates: [], scores }, makeStyle(false), { all: true })).toMatch(
    / 0\.4 .*0\.39 to 0\.41 +0\.38:1 0\.42:1/,
  );
});
