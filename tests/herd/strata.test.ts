/** What is counted together, and what never is. */
import { describe, expect, test } from "vitest";
import { herdEstimates, strata } from "../../src/herd/index.ts";
import { consolidation } from "../score/pigs.ts";
import { archiveOf, farm, visit } from "./archive.ts";

interface Pig {
  readonly basis?: string;
  readonly group?: string;
  readonly age?: string;
  readonly share?: number;
}

let made = 0;
const pig = ({ basis, group, age, share = 0 }: Pig) => ({
  format: 1,
  case: `pig-${++made}`,
  pig: { ...(group !== undefined && { group }), ...(age !== undefined && { age }) },
  ...(basis !== undefined && { selection: { basis } }),
  respiratory: { lungs: { consolidation: consolidation({ left_cranial: share }) } },
});

const asked = { indicators: ["lung-consolidation"], scales: ["madec-kobisch-1982"] };

describe("selection basis", () => {
  const archive = archiveOf({
    "farm/farm.yaml": farm("alder"),
    "farm/spring/visit.yaml": visit("alder-spring", "2026-03-14"),
    "farm/spring/1.yaml": pig({ basis: "found-dead", share: 50 }),
    "farm/spring/2.yaml": pig({ share: 50 }),
    "farm/spring/3.yaml": pig({ basis: "clinical", share: 50 }),
    "farm/spring/4.yaml": pig({ basis: "random" }),
    "farm/spring/5.yaml": pig({ basis: "random" }),
    "farm/spring/6.yaml": pig({ basis: "clinical" }),
  });

  test.each([undefined, [], ["visit"] as const])("is never pooled (by %j)", (by) => {
    const { estimates, scores } = herdEstimates(archive, { ...asked, ...(by !== undefined && { by }) });
    const counted = estimates.map(({ basis, affected, examined }) => [basis, affected, examined]);
    expect(counted).toEqual([
      ["random", 0, 2],
      ["clinical", 1, 2],
      ["found-dead", 1, 1],
      [null, 1, 1],
    ]);
    expect(scores.map(({ basis, n }) => [basis, n])).toEqual([
      ["random", 2],
      ["clinical", 2],
      ["found-dead", 1],
      [null, 1],
    ]);
  });

  test("every case is in one stratum", () => {
    const cells = strata(archive.cases, []);
    expect(cells.flatMap(({ cases }) => cases.map(({ id }) => id)).sort()).toEqual(
      archive.cases.map(({ id }) => id).sort(),
    );
  });
});

describe("visit, group and age class", () => {
  const archive = archiveOf({
    "farm/farm.yaml": farm("alder"),
    "farm/a-later/visit.yaml": visit("alder-autumn", "2026-10-02"),
    "farm/a-later/1.yaml": pig({ basis: "random", group: "room-2", age: "60 d", share: 50 }),
    "farm/b-earlier/visit.yaml": visit("alder-spring", "2026-03-14"),
    "farm/b-earlier/1.yaml": pig({ basis: "random", group: "room-10", age: "10 wk" }),
    "farm/b-earlier/2.yaml": pig({ basis: "random", age: "60 d" }),
    "farm/b-earlier/3.yaml": pig({ basis: "random", group: "room-2", age: "160 d" }),
    "farm/b-earlier/4.yaml": pig({ basis: "random", group: "room-2", age: "60 d" }),
    "farm/b-earlier/5.yaml": pig({ basis: "random", group: "room-2" }),
    "farm/loose/1.yaml": pig({ basis: "random" }),
  });

  test("split by default, in the order of date, group name and age; what is not recorded last", () => {
    expect(strata(archive.cases).map(({ stratum }) => stratum)).toEqual([
      { visit: "alder-spring", group: "room-2", age_class: "weaner" },
      { visit: "alder-spring", group: "room-2", age_class: "finisher" },
      { visit: "alder-spring", group: "room-2", age_class: null },
      { visit: "alder-spring", group: "room-10", age_class: "weaner" },
      { visit: "alder-spring", group: null, age_class: "weaner" },
      { visit: "alder-autumn", group: "room-2", age_class: "weaner" },
      { visit: null, folder: "farm/loose", group: null, age_class: null },
    ]);
  });

  test("visits are pooled only when visit is left out, and the sentence says that they were", () => {
    const pooled = herdEstimates(archive, { ...asked, by: ["group"] }).estimates;
    const room2 = pooled.find(({ stratum }) => stratum.group === "room-2");
    expect(room2).toMatchObject({ stratum: { group: "room-2" }, affected: 1, examined: 4 });
    expect(room2?.wording).toContain("of these pigs; they stand for no group, because they are of 2 visits");
    const apart = herdEstimates(archive, { ...asked, by: ["visit"] }).estimates;
    expect(apart.map(({ stratum, affected, examined }) => [stratum.visit, affected, examined])).toEqual([
      ["alder-spring", 0, 5],
      ["alder-autumn", 1, 1],
      [null, 0, 1],
    ]);
    expect(apart[0]?.wording).toContain(
      "because neither visit.yaml nor farm.yaml says how many pigs are in room-10",
    );
  });
});

test("groups and visits of two farms stay apart though their names are the same", () => {
  const archive = archiveOf({
    "alder/farm.yaml": farm("alder"),
    "alder/v/visit.yaml": visit("spring", "2026-03-14"),
    "alder/v/1.yaml": pig({ basis: "random", group: "nursery" }),
    "birch/farm.yaml": farm("birch"),
    "birch/v/visit.yaml": visit("spring", "2026-03-14"),
    "birch/v/1.yaml": pig({ basis: "random", group: "nursery" }),
  });
  expect(strata(archive.cases, ["group"]).map(({ stratum }) => stratum)).toEqual([
    { farm: "alder", group: "nursery" },
    { farm: "birch", group: "nursery" },
  ]);
  expect(strata(archive.cases, ["visit"])).toHaveLength(2);
  expect(strata(archive.cases, ["age_class"])).toHaveLength(1);
});

describe("settings", () => {
  test("indicators, scales and level come from carcase.yaml, and a house indicator is counted", () => {
    const archive = archiveOf({
      "carcase.yaml": {
        format: 1,
        level: 0.9,
        scales: ["christensen-1999"],
        indicators: {
          "lung-half": { title: "Half a lobe", score: { scale: "christensen-1999", above: 2 } },
        },
      },
      "v/visit.yaml": visit("spring", "2026-03-14"),
      "v/1.yaml": pig({ basis: "random", share: 60 }),
      "v/2.yaml": pig({ basis: "random", share: 40 }),
    });
    const { estimates, scores } = herdEstimates(archive);
    const half = estimates.find(({ indicator }) => indicator === "lung-half");
    expect(half).toMatchObject({ affected: 1, examined: 2, level: 0.9, source: null, confidence: null });
    expect(estimates.every(({ level }) => level === 0.9)).toBe(true);
    expect(scores.map(({ scale }) => scale)).toEqual(["christensen-1999"]);
    expect(scores[0]).toMatchObject({ mean: 2.5, unit: "%" });
  });

  test("one name with two meanings is not counted together", () => {
    const house = (above: number) => ({
      format: 1,
      indicators: { deep: { title: `Above ${above}`, score: { scale: "christensen-1999", above } } },
    });
    const archive = archiveOf({
      "alder/carcase.yaml": house(1),
      "alder/1.yaml": pig({ basis: "random", share: 60 }),
      "birch/carcase.yaml": house(50),
      "birch/1.yaml": pig({ basis: "random", share: 60 }),
    });
    const { estimates } = herdEstimates(archive, { by: [], indicators: ["deep"] });
    expect(estimates.map(({ title, affected, examined }) => [title, affected, examined])).toEqual([
      ["Above 1", 1, 1],
      ["Above 50", 0, 1],
    ]);
  });
});

test("an archive without cases has nothing to say", () => {
  const nothing = { answers: [], told_first: { indicators: [], scales: [] }, estimates: [], scores: [] };
  expect(herdEstimates([])).toEqual(nothing);
});
