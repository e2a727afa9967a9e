/** Scores by group: the numbers are those of the pigs, and pigs chosen in different ways are never taken together. */
import { describe, expect, it } from "vitest";
import { groupScores } from "../../src/herd/index.ts";
import { scoreCases } from "../../src/score/index.ts";
import { summarise } from "../../src/statistics/index.ts";
import { archiveOf, farm, visit } from "./archive.ts";

const pig = (id: string, group: string, basis: string, grade: number | undefined) => ({
  format: 1,
  case: id,
  pig: { group },
  selection: { basis },
  respiratory: {
    turbinates:
      grade === undefined
        ? { not_examined: "sold" }
        : { section: "premolar-1", grades: { "maff-1978": grade } },
  },
});
const archive = archiveOf({
  "ash/farm.yaml": farm("ash"),
  "ash/v/visit.yaml": visit("ash-1", "2026-03-14"),
  "ash/v/1.yaml": pig("a1", "nursery", "random", 1),
  "ash/v/2.yaml": pig("a2", "nursery", "random", 3),
  "ash/v/3.yaml": pig("a3", "nursery", "clinical", 5),
  "ash/v/4.yaml": pig("a4", "finisher", "random", undefined),
  "elm/farm.yaml": farm("elm"),
  "elm/v/visit.yaml": visit("elm-1", "2026-03-15"),
  "elm/v/1.yaml": pig("e1", "nursery", "random", 0),
});
const rows = (by: Parameters<typeof groupScores>[1]["by"]) =>
  groupScores(archive, { by, scales: ["maff-1978"] }).map(({ stratum, basis, n, not_examined, mean }) => [
    Object.values(stratum).join("/"),
    basis,
    n,
    not_examined,
    mean,
  ]);

describe("scores by group", () => {
  it("by farm", () => {
    expect(rows(["farm"])).toEqual([
      ["ash", "random", 2, 1, 2],
      ["ash", "clinical", 1, 0, 5],
      ["elm", "random", 1, 0, 0],
    ]);
  });

  it("by group keeps groups of two farms apart, even under one name", () => {
    expect(
      rows(["group"])
        .map(([stratum, basis, n]) => `${stratum} ${basis} ${n}`)
        .sort(),
    ).toEqual([
      "ash/finisher random 0",
      "ash/nursery clinical 1",
      "ash/nursery random 2",
      "elm/nursery random 1",
    ]);
  });

  it("by visit and farm names each farm once", () => {
    expect(rows(["visit", "farm"]).map(([stratum]) => stratum)).toEqual([
      "ash/ash-1",
      "ash/ash-1",
      "elm/elm-1",
    ]);
  });

  it("describe the scores of the pigs", () => {
    const [first] = groupScores(archive, { by: ["farm"], scales: ["maff-1978"] });
    const values = scoreCases(archive, { scales: ["maff-1978"] })
      .cases.filter((one) => ["a1", "a2"].includes(one.case))
      .flatMap(({ scores }) => scores[0]?.value ?? []);
    expect(first).toMatchObject(summarise(values));
  });

  it("names no scale that does not exist", () => {
    expect(() => groupScores(archive, { by: ["farm"], scales: ["maff-1979"] })).toThrow(
      "Did you mean maff-1978?",
    );
  });
});

it("counts grades that are certain, and tells how many pigs have a range only", () => {
  const stomach = (id: string, pars_oesophagea: object) => ({
    format: 1,
    case: id,
    selection: { basis: "random" },
    stomach: { pars_oesophagea },
  });
  const stomachs = archiveOf({
    "v/visit.yaml": visit("v-1", "2026-03-14"),
    "v/1.yaml": stomach("p1", { keratin: 30, ulcer: 10 }),
    "v/2.yaml": stomach("p2", { keratin: 30, erosion: 5 }),
    "v/3.yaml": stomach("p3", { not_examined: "sold" }),
    "v/4.yaml": stomach("p4", { keratin: 0, erosion: 0, ulcer: 0 }),
  });
  const [scores] = groupScores(stomachs, { by: ["visit"], scales: ["swaby-gregory-2012"] });
  expect(scores).toMatchObject({ n: 2, max: 3, not_graded: 1, not_examined: 1, range_only: 1 });
});
