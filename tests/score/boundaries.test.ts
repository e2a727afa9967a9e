/** Both sides of every limit of every scale. The last test fails when a limit has no row here. */
import { describe, expect, test } from "vitest";
import { scales } from "../../src/knowledge/scales.ts";
import { classOf, rounded, withoutFloatError } from "../../src/score/index.ts";
import { every } from "../every.ts";
import { consolidation, scoreOn, snout } from "./pigs.ts";

const grade = (scale: string, value: number) => ({ section: "premolar-1", grades: { [scale]: value } });
const lung = (left_cranial: number) => ({ consolidation: consolidation({ left_cranial }) });
const points = (left_cranial: number, left_middle = 0, right_cranial = 0, right_middle = 0) => ({
  consolidation: consolidation({ left_cranial, left_middle, right_cranial, right_middle }),
});
const conchae = (a: number, b: number, c: number, d: number, septum = "straight") => ({
  section: "premolar-1",
  left: { dorsal: a, ventral: b },
  right: { dorsal: c, ventral: d },
  septum,
});

const sized = (left_cranial: number, size: string) => ({
  ...lung(left_cranial),
  lesion_size: { left_cranial: size },
});
/** A lung with this percentage of it consolidated: lobes that are 5, 5, 6, 10, 11, 29 and 34 % of it, filled in turn. */
const share = (percent: number) => {
  let rest = percent;
  const filled = weights.map(([lobe, weight]) => {
    const taken = Math.min(rest, weight);
    rest = Math.round((rest - taken) * 1e6) / 1e6;
    return [lobe, Math.round((taken / weight) * 1e12) / 1e10];
  });
  return { consolidation: Object.fromEntries(filled) };
};
const weights = [
  ["left_cranial", 5],
  ["accessory", 5],
  ["right_middle", 10],
  ["left_middle", 6],
  ["right_cranial", 11],
  ["left_caudal", 29],
  ["right_caudal", 34],
] as const;
const stomach = (keratin: number, erosion: number, ulcer: number) => ({ keratin, erosion, ulcer });
const tail = (wound: string, wound_swollen: string, lost: number) => ({ wound, wound_swollen, lost });

/** scale, what is recorded, value, class, and the limits that the row stands at or just above */
type Row = [string, object, number | null, string | null, number[]];
const rows: Row[] = [
  ["maff-1978", grade("maff-1978", 0), 0, "normal", [0]],
  ["maff-1978", grade("maff-1978", 1), 1, "suspicious", [1]],
  ["maff-1978", grade("maff-1978", 2), 2, "obvious atrophy", [2]],
  ["maff-1978", grade("maff-1978", 3), 3, "severe atrophy", [3]],
  ["maff-1978", grade("maff-1978", 5), 5, "severe atrophy", []],
  ["embrapa-1993", grade("embrapa-1993", 0), 0, "normal", [0]],
  ["embrapa-1993", grade("embrapa-1993", 1), 1, "slight", [1]],
  ["embrapa-1993", grade("embrapa-1993", 2), 2, "clearly atrophic", [2]],
  ["embrapa-1993", grade("embrapa-1993", 3), 3, "strongly atrophic", [3]],
  // Polloni et al. 2018 (verified): 0 / 1-7 / 8-14 / 15 and more; 15 itself is this project's reading of ">15".
  ["polloni-2018", snout(0), 0, "normal", [0]],
  ["polloni-2018", conchae(0, 1, 0, 0), 1, "mild", [1]],
  ["polloni-2018", conchae(1, 2, 2, 2), 7, "mild", []],
  ["polloni-2018", conchae(2, 2, 2, 2), 8, "moderate", [8]],
  ["polloni-2018", conchae(3, 3, 4, 3, "slight"), 14, "moderate", []],
  ["polloni-2018", conchae(3, 3, 4, 3, "marked"), 15, "severe", [15]],
  ["polloni-2018", conchae(4, 4, 4, 4), 16, "severe", []],
  ["polloni-2018", conchae(4, 4, 4, 4, "marked"), 18, "severe", []],
  ...(["madec-kobisch-1982", "madec-kobisch-1982-six-lobes"] as const).flatMap((scale): Row[] => [
    [scale, lung(0), 0, null, [0]],
    [scale, lung(0.1), 1, null, []],
    [scale, lung(24.9), 1, null, []],
    [scale, lung(25), 2, null, [25]],
    [scale, lung(49.9), 2, null, []],
    [scale, lung(50), 3, null, [50]],
    [scale, lung(74.9), 3, null, []],
    [scale, lung(75), 4, null, [75]],
    [scale, lung(100), 4, null, []],
  ]),
  // J. Carr report form (verified): 0 absent, 1-14 mild, 15-29 moderate, 30-55 severe.
  ["goodwin-1971", points(0), 0, "absent", [0]],
  ["goodwin-1971", points(1), 0.1, "mild", []],
  ["goodwin-1971", points(100, 40), 14, "mild", []],
  ["goodwin-1971", points(100, 49), 14.9, "mild", []],
  ["goodwin-1971", points(100, 50), 15, "moderate", [15]],
  ["goodwin-1971", points(100, 100, 90), 29, "moderate", []],
  ["goodwin-1971", points(100, 100, 99), 29.9, "moderate", []],
  ["goodwin-1971", points(100, 100, 100), 30, "severe", [30]],
  ["collins-1989-grade", grade("collins-1989-grade", 0), 0, "normal", [0]],
  ["collins-1989-grade", grade("collins-1989-grade", 1), 1, "mild", [1]],
  ["collins-1989-grade", grade("collins-1989-grade", 2), 2, "moderate", [2]],
  ["collins-1989-grade", grade("collins-1989-grade", 3), 3, "severe", [3]],
  // Rutter et al. 1984 (verified): more than +10 mm.
  ["rutter-1984", { brachygnathia: "-60 mm" }, -60, "up to +10 mm", [-60]],
  ["rutter-1984", { brachygnathia: "10 mm" }, 10, "up to +10 mm", []],
  ["rutter-1984", { brachygnathia: "10.1 mm" }, 10.1, "above +10 mm", [10]],
  // Madec & Leneveu 2011 (verified): less than a coin, less than 50 %, about 75 %, entire lobe.
  ["madec-leneveu-2011", lung(0), 0, null, [0]],
  ["madec-leneveu-2011", sized(0.1, "below-coin"), 1, null, []],
  ["madec-leneveu-2011", sized(49.9, "below-coin"), 1, null, []],
  ["madec-leneveu-2011", sized(49.9, "coin-or-more"), 2, null, []],
  ["madec-leneveu-2011", lung(50), 3, null, [50]],
  ["madec-leneveu-2011", lung(75), 3, null, [75]],
  ["madec-leneveu-2011", lung(75.1), null, null, [75]],
  ["madec-leneveu-2011", lung(99.9), null, null, []],
  ["madec-leneveu-2011", lung(100), 4, null, [100]],
  // German rule (verified): up to 10, 10 to 30, more than 30 % of the lung; here the middle right lobe is 10 % of it.
  ["german-rule-lungs", share(0), 0, null, [0]],
  ["german-rule-lungs", share(10), 0, null, []],
  ["german-rule-lungs", share(10.1), 1, null, [10]],
  ["german-rule-lungs", share(30), 1, null, []],
  ["german-rule-lungs", share(30.1), 2, null, [30]],
  ["german-rule-lungs", share(100), 2, null, []],
  // Piffer & Brito 1991 (limits from memory): 0, up to 11, 21, 31, 41, 51, more.
  ["piffer-brito-1991", share(0), 0, null, [0]],
  ["piffer-brito-1991", share(0.1), 1, null, []],
  ...[11, 21, 31, 41, 51].flatMap((limit, index): Row[] => [
    ["piffer-brito-1991", share(limit), index + 1, null, []],
    ["piffer-brito-1991", share(limit + 0.1), index + 2, null, [limit]],
  ]),
  // Santa Catarina 1985 (verified): 0; less than 11; 11 to less than 21; 21 and more.
  ["sobestiansky-1990-lungs", share(0), 1, null, [0]],
  ["sobestiansky-1990-lungs", share(0.1), 2, null, []],
  ["sobestiansky-1990-lungs", share(10.9), 2, null, []],
  ["sobestiansky-1990-lungs", share(11), 3, null, [11]],
  ["sobestiansky-1990-lungs", share(20.9), 3, null, []],
  ["sobestiansky-1990-lungs", share(21), 4, null, [21]],
  ["german-rule-pleura", { adhering_area: 0 }, 0, null, [0]],
  ["german-rule-pleura", { adhering_area: 10 }, 0, null, []],
  ["german-rule-pleura", { adhering_area: 10.1 }, 1, null, [10]],
  ["german-rule-pleura", { adhering_area: 30 }, 1, null, []],
  ["german-rule-pleura", { adhering_area: 30.1 }, 2, null, [30]],
  ["german-rule-liver", { milk_spots: 0 }, 0, null, [0]],
  ["german-rule-liver", { milk_spots: 5 }, 0, null, []],
  ["german-rule-liver", { milk_spots: 6 }, 1, null, [5]],
  ["milk-spots-present", { milk_spots: 0 }, 0, null, [0]],
  ["milk-spots-present", { milk_spots: 1 }, 1, null, []],
  ["milk-spots-three-classes", { milk_spots: 0 }, 0, null, [0]],
  ["milk-spots-three-classes", { milk_spots: 1 }, 1, null, []],
  ["milk-spots-three-classes", { milk_spots: 10 }, 1, null, []],
  ["milk-spots-three-classes", { milk_spots: 11 }, 2, null, [10]],
  ...(["swaby-gregory-2012", "polish-stomach-2024"] as const).flatMap((scale): Row[] => [
    [scale, stomach(0, 0, 0), 0, null, [0]],
    [scale, stomach(0.1, 0, 0), 1, null, []],
    [scale, stomach(100, 0.1, 0), 2, null, []],
    [scale, stomach(0, 0, 0.1), 3, null, []],
    [scale, stomach(100, 100, 100), 3, null, []],
  ]),
  // Brazil 2014 (verified): less than 33, 33-66, more than 66 %.
  ["brazil-stomach-2014", stomach(0, 0, 0), 0, null, [0]],
  ["brazil-stomach-2014", stomach(50, 0, 0), 1, null, []],
  ["brazil-stomach-2014", stomach(0, 0, 0.1), 2, null, []],
  ["brazil-stomach-2014", stomach(0, 0, 32.9), 2, null, []],
  ["brazil-stomach-2014", stomach(0, 0, 33), 3, null, [33]],
  ["brazil-stomach-2014", stomach(0, 0, 66), 3, null, []],
  ["brazil-stomach-2014", stomach(0, 0, 66.1), 4, null, [66]],
  // JAS 2016 (verified): none 1, less than 25 2, 25-75 3, more 4; 4 more when the ulcer counts more than 1.
  ["stomach-index-2016", stomach(0, 0, 0), 2, null, [0]],
  ["stomach-index-2016", stomach(24.9, 0, 0), 3, null, []],
  ["stomach-index-2016", stomach(25, 0, 0), 4, null, [25]],
  ["stomach-index-2016", stomach(75, 0, 0), 4, null, []],
  ["stomach-index-2016", stomach(75.1, 0, 0), 5, null, [75]],
  ["stomach-index-2016", stomach(0, 0, 0.1), 7, null, []],
  // Keeling et al. 2012 (verified): more than half left, half or less left.
  ["keeling-2012", { lost: 0, wound: "none" }, 0, null, [0]],
  ["keeling-2012", { lost: 0, wound: "scratch" }, 1, null, []],
  ["keeling-2012", { lost: 0.1, wound: "none" }, 1, null, []],
  ["keeling-2012", { lost: 49.9, wound: "open" }, 1, null, []],
  ["keeling-2012", { lost: 50, wound: "none" }, 2, null, [50]],
  // Valros et al. 2020 (verified): less and more than 2 cm; 2 cm itself is this project's reading.
  ["valros-2020", { wound: "none" }, 0, null, [0]],
  ["valros-2020", { wound: "healed", wound_size: "30 mm" }, 1, null, []],
  ["valros-2020", { wound: "open", wound_size: "19.9 mm" }, 2, null, []],
  ["valros-2020", { wound: "open", wound_size: "2 cm" }, 3, null, [20]],
  ["kritas-morrison-2007", tail("none", "no", 0), 0, null, [0]],
  ["kritas-morrison-2007", tail("scratch", "no", 0), 1, null, []],
  ["kritas-morrison-2007", tail("scratch", "yes", 0), 3, null, []],
  ["kritas-morrison-2007", tail("none", "no", 0.1), 4, null, []],
  // German trial key (verified): up to 1 cm; up to a third, up to two thirds; 10 and 30 % of the rim; 10 and 20 % of the ear.
  ["german-key-tail-wound", { wound: "open", wound_size: "0.1 mm" }, 2, null, [0]],
  ["german-key-tail-wound", { wound: "open", wound_size: "10 mm" }, 2, null, []],
  ["german-key-tail-wound", { wound: "open", wound_size: "1.01 cm" }, 3, null, [10]],
  ["german-key-tail-loss", { lost: 0 }, 0, null, [0]],
  ["german-key-tail-loss", { lost: 0.1 }, 1, null, []],
  ["german-key-tail-loss", { lost: 33.3 }, 1, null, []],
  ["german-key-tail-loss", { lost: 34 }, 2, null, [33.4]],
  ["german-key-tail-loss", { lost: 66.7 }, 2, null, []],
  ["german-key-tail-loss", { lost: 67 }, 3, null, [66.7]],
  ["german-key-ear-wound", { rim_wound: { left: 0, right: 0 } }, 0, null, [0]],
  ["german-key-ear-wound", { rim_wound: { left: 9.9, right: 0.1 } }, 1, null, []],
  ["german-key-ear-wound", { rim_wound: { left: 0, right: 10 } }, 2, null, [10]],
  ["german-key-ear-wound", { rim_wound: { left: 30, right: 0 } }, 2, null, []],
  ["german-key-ear-wound", { rim_wound: { left: 30.1, right: 0 } }, 3, null, [30]],
  ["german-key-ear-loss", { lost: { left: 0, right: 0 } }, 0, null, [0]],
  ["german-key-ear-loss", { lost: { left: 9.9, right: 0 } }, 1, null, []],
  ["german-key-ear-loss", { lost: { left: 10, right: 0 } }, 2, null, [10]],
  ["german-key-ear-loss", { lost: { left: 0, right: 20 } }, 2, null, []],
  ["german-key-ear-loss", { lost: { left: 0, right: 20.1 } }, 3, null, [20]],
  ["lung-float", { float: "sinks" }, 0, "never breathed", [0]],
  ["lung-float", { float: "partly" }, 1, "breathed in part", [1]],
  ["lung-float", { float: "floats" }, 2, "breathed", [2]],
  // Ullrey et al. 1965 (from memory): 3 to 30 cm.
  ["ullrey-1965", { crown_rump: "3 cm" }, 30.4, null, []],
  ["ullrey-1965", { crown_rump: "29 mm" }, null, null, []],
  ["ullrey-1965", { crown_rump: "30 cm" }, 114.37, null, []],
  ["ullrey-1965", { crown_rump: "301 mm" }, null, null, []],
];

describe("classes and cut points", () => {
  every("are met: scale, entry, value, class", rows, ([scale, entry, value, name]) => {
    const score = scoreOn(scale, entry);
    expect(score.value).toBe(value);
    expect(score.class).toBe(name);
  });

  every("have a row for every limit", scales.values(), ({ id, classes, steps, total_steps, parts }) => {
    const tested = rows.filter(([scale]) => scale === id).flatMap(([, , , , limits]) => limits);
    const own = Object.values(parts).flatMap((part) => part.steps ?? []);
    const written = [...(classes ?? []), ...(steps ?? []), ...(total_steps ?? []), ...own].map(
      ({ from, above }) => from ?? above ?? Number.NaN,
    );
    expect([...new Set(written)].filter((limit) => !tested.includes(limit))).toEqual([]);
  });
});

describe("limits", () => {
  const classes = [
    { name: "low", from: 0 },
    { name: "high", from: 0.3 },
    { name: "top", above: 0.7 },
  ];

  test("from includes the limit and above does not", () => {
    expect(classOf(classes, 0.3)).toBe("high");
    expect(classOf(classes, 0.7)).toBe("high");
    expect(classOf(classes, 0.700001)).toBe("top");
    expect(classOf(classes, 0.299999)).toBe("low");
  });

  test("binary rounding error does not move a value over a limit", () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(classOf([{ name: "more", above: 0.3 }], 0.1 + 0.2)).toBeNull();
    expect(0.7 - 0.4).toBeLessThan(0.3);
    expect(classOf(classes, 0.7 - 0.4)).toBe("high");
    expect(withoutFloatError(0.1 + 0.2)).toBe(0.3);
  });

  test("below the first class, without classes and without a value there is no class", () => {
    expect(classOf(classes, -1)).toBeNull();
    expect(classOf(undefined, 1)).toBeNull();
    expect(classOf(classes, null)).toBeNull();
  });

  test("rounding is half up in decimals, not in binary", () => {
    expect(rounded(0.305, 2)).toBe(0.31);
    expect(rounded(1.005, 2)).toBe(1.01);
    expect(rounded(0.3049, 2)).toBe(0.3);
  });
});
