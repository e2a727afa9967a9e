/** Both sides of every limit of every scale. The last test fails when a limit has no row here. */
import { describe, expect, test } from "vitest";
import { scales } from "../../src/knowledge/index.ts";
import { classOf, rounded, withoutFloatError } from "../../src/score/index.ts";
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

/** scale, what is recorded, value, class, and the limits that the row stands at or just below */
const rows: [string, object, number, string | null, number[]][] = [
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
  ...(["madec-kobisch-1982", "madec-kobisch-1982-six-lobes"] as const).flatMap(
    (scale): [string, object, number, null, number[]][] => [
      [scale, lung(0), 0, null, [0]],
      [scale, lung(0.1), 1, null, []],
      [scale, lung(24.9), 1, null, []],
      [scale, lung(25), 2, null, [25]],
      [scale, lung(49.9), 2, null, []],
      [scale, lung(50), 3, null, [50]],
      [scale, lung(74.9), 3, null, []],
      [scale, lung(75), 4, null, [75]],
      [scale, lung(100), 4, null, []],
    ],
  ),
  // J. Carr report form (verified): 0 absent, 1-14 mild, 15-29 moderate, 30-55 severe.
  ["goodwin-1971", points(0), 0, "absent", [0]],
  ["goodwin-1971", points(1), 0.1, "mild", []],
  ["goodwin-1971", points(100, 40), 14, "mild", []],
  ["goodwin-1971", points(100, 49), 14.9, "mild", []],
  ["goodwin-1971", points(100, 50), 15, "moderate", [15]],
  ["goodwin-1971", points(100, 100, 90), 29, "moderate", []],
  ["goodwin-1971", points(100, 100, 99), 29.9, "moderate", []],
  ["goodwin-1971", points(100, 100, 100), 30, "severe", [30]],
];

describe("classes and cut points", () => {
  test.each(rows)("%s %j is %d, %s", (scale, entry, value, name) => {
    const score = scoreOn(scale, entry);
    expect(score.value).toBe(value);
    expect(score.class).toBe(name);
  });

  test.each([...scales.values()])("every limit of $id has a row", ({ id, classes, steps }) => {
    const tested = rows.filter(([scale]) => scale === id).flatMap(([, , , , limits]) => limits);
    const written = [...(classes ?? []), ...(steps ?? [])].map(
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
