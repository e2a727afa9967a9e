/** Published and worked values, each with its source and how sure it is. */
import { expect, test } from "vitest";
import { scoreOn, snout } from "./pigs.ts";

const full = Object.fromEntries(
  [
    "left_cranial",
    "left_middle",
    "left_caudal",
    "right_cranial",
    "right_middle",
    "right_caudal",
    "accessory",
  ].map((lobe) => [lobe, 100]),
);
/** The cranioventral lung that the lobe scales are worked on: per cent of each lobe. */
const cranioventral = {
  left_cranial: 20,
  left_middle: 50,
  left_caudal: 0,
  right_cranial: 40,
  right_middle: 60,
  right_caudal: 5,
  accessory: 10,
};

test("summed snout score: four conchae at 4 and a marked septum give 18 (Ph. Eur. 1361, from memory)", () => {
  expect(scoreOn("polloni-2018", snout(4, { septum: "marked" })).value).toBe(18);
});

test("lung score: all lobes at 4 give 28, six lobes 24 (Madec & Kobisch 1982; Henninger et al. 2014, verified)", () => {
  expect(scoreOn("madec-kobisch-1982", { consolidation: full })).toMatchObject({ value: 28, max: 28 });
  expect(scoreOn("madec-kobisch-1982-six-lobes", { consolidation: full })).toMatchObject({
    value: 24,
    max: 24,
  });
});

test("0-55 lung score: all parts full give 4 x 10 + 3 x 5 (Holt et al. 2011, verified)", () => {
  const caudal_cranial_part = { left: 100, right: 100 };
  const score = scoreOn("goodwin-1971", { consolidation: full, caudal_cranial_part });
  expect(score).toMatchObject({ value: 55, max: 55, class: "severe" });
});

test("one lung on two scales: 11 of 28 and 16.6 % (derived; cut points and weights from memory)", () => {
  const points = scoreOn("madec-kobisch-1982", { consolidation: cranioventral });
  expect(points.value).toBe(11);
  expect(Object.values(points.parts)).toEqual([1, 3, 0, 2, 3, 1, 1]);
  expect(points.confidence).toBe("from-memory");
  const percent = scoreOn("christensen-1999", { consolidation: cranioventral });
  expect(percent).toMatchObject({ value: 16.6, unit: "%", class: null, confidence: "from-memory" });
  expect(percent.parts["right caudal lobe"]).toBe(1.7);
});

test("six lobes leave out the accessory lobe: 10 where seven lobes give 11 (derived)", () => {
  expect(scoreOn("madec-kobisch-1982-six-lobes", { consolidation: cranioventral }).value).toBe(10);
});

test.each([
  // Dottori et al. 2007 grid (that 2-4 are dorsocaudal is verified; the wording of the grades is from memory)
  ["none", "none", 0],
  ["cranioventral", "none", 1],
  ["cranioventral", "cranioventral", 1],
  ["dorsocaudal-focal", "none", 2],
  ["dorsocaudal-focal", "cranioventral", 2],
  ["dorsocaudal-focal", "dorsocaudal-focal", 3],
  ["dorsocaudal-extensive", "none", 3],
  ["dorsocaudal-extensive", "dorsocaudal-focal", 3],
  ["dorsocaudal-extensive", "dorsocaudal-extensive", 4],
])("pleurisy %s and %s is %d, on either side", (one, other, value) => {
  expect(scoreOn("dottori-2007", { pleurisy: { left: one, right: other } }).value).toBe(value);
  expect(scoreOn("dottori-2007", { pleurisy: { left: other, right: one } }).value).toBe(value);
});

test("of two places on one side the worse counts", () => {
  const right = ["dorsocaudal-extensive", "cranioventral"];
  expect(scoreOn("dottori-2007", { pleurisy: { left: "none", right } })).toMatchObject({
    value: 3,
    parts: { "left side": 0, "right side": 3 },
  });
});
