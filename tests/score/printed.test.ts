/** A printed number never lies on the other side of a limit than its class, on any scale and for any value. */
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { number } from "../../src/formats/page/numbers.ts";
import { herdIndices } from "../../src/herd/index.ts";
import type { ClassLimit, Scale } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { classOf, decimalsInClass, printedScore, rangeDecimals, rounded } from "../../src/score/index.ts";
import { runs } from "../random.ts";
import { scaleNamed } from "./pigs.ts";

const all = [...scales.values()];
const limitsOf = ({ classes = [], indices = [] }: Scale): number[] =>
  [...classes, ...indices.flatMap((index) => index.classes ?? [])].flatMap(({ from, above }) => [
    from ?? above ?? 0,
  ]);

/** Any value of the scale, and many that lie a hair beside its limits. */
function valuesOf(scale: Scale): fc.Arbitrary<number> {
  const [min, max] = scale.range;
  const hair = fc.double({ min: -0.01, max: 0.01, noNaN: true });
  const held = (value: number): number => Math.min(max, Math.max(min, value));
  const beside = fc
    .tuple(fc.constantFrom(...limitsOf(scale), min, max), hair, fc.constantFrom(1, 1e-2, 1e-4, 1e-6))
    .map(([limit, off, shrink]) => held(limit + off * shrink));
  // No observation has more than nine decimals, and no score is told to more than ten digits.
  return fc
    .oneof(fc.double({ min, max, noNaN: true }), beside)
    .map((value) => Number(Number(value.toFixed(9)).toPrecision(10)));
}

describe.each(all.map((scale) => [scale.id, scale] as const))("%s", (_, scale) => {
  it("prints scores that are of their class", () => {
    fc.assert(
      fc.property(valuesOf(scale), (value) => {
        const printed = printedScore(scale, value);
        expect(printed).toMatch(/^-?\d+(\.\d+)?(e-\d+)?$/);
        expect(classOf(scale.classes, Number(printed))).toBe(classOf(scale.classes, value));
        const decimals = rangeDecimals(scale.range);
        expect(Math.abs(Number(printed) - value)).toBeLessThanOrEqual(0.5 / 10 ** decimals + 1e-9);
      }),
      { numRuns: runs(200) },
    );
  });

  it("prints herd indices that are of their class", () => {
    fc.assert(
      fc.property(fc.array(valuesOf(scale), { minLength: 1, maxLength: 5 }), (values) => {
        for (const { id, value, class: named, decimals } of herdIndices(scale, values, {
          basis: "random",
          slaughtered: true,
        })) {
          const index = scale.indices?.find((one) => one.id === id);
          if (value === null || index?.classes === undefined) continue;
          expect(named).not.toBeNull();
          expect(classOf(index.classes, Number(number(value, decimals)))).toBe(named);
        }
      }),
      { numRuns: runs(100) },
    );
  });
});

test("limits of any fineness are kept apart", () => {
  const grid = fc.integer({ min: -2000, max: 2000 });
  fc.assert(
    fc.property(
      fc.uniqueArray(grid, { minLength: 1, maxLength: 5 }),
      grid,
      fc.constantFrom(1, 10, 1000),
      fc.boolean(),
      (at, value, shift, included) => {
        const limits: ClassLimit[] = at
          .sort((a, b) => a - b)
          .map((limit, index) => ({
            name: `class ${index}`,
            ...(included ? { from: limit / shift } : { above: limit / shift }),
          }));
        const exact = value / shift / 10;
        const printed = rounded(exact, decimalsInClass(exact, limits, 0));
        expect(classOf(limits, printed)).toBe(classOf(limits, exact));
      },
    ),
  );
});

test("decimals follow from the range: a hundredth of it at least", () => {
  const ranges = [
    [0, 1],
    [0, 5],
    [0, 10],
    [0, 28],
    [0, 55],
    [0, 100],
    [-60, 100],
    [0, 5000],
    [3, 3],
  ];
  expect(ranges.map(rangeDecimals)).toEqual([3, 2, 2, 1, 1, 1, 1, 0, 3]);
});

test.each([
  // Ratios a reader can tell apart.
  ["collins-1989-area", 0.38, "0.38"],
  ["collins-1989-area", 0.42, "0.42"],
  // 15 is the first moderate point: a mild lung must not be printed as 15.
  ["goodwin-1971", 14.999, "14.999"],
  ["goodwin-1971", 14.94, "14.9"],
  ["goodwin-1971", 15.04, "15"],
  // Any consolidation at all is mild, so that it is not printed as 0.
  ["goodwin-1971", 0.04, "0.04"],
  ["christensen-1999", 13.45, "13.5"],
  ["rutter-1984", 10.02, "10.02"],
  ["rutter-1984", -0.04, "0"],
])("%s prints %d as %s", (id, value, printed) => {
  expect(printedScore(scaleNamed(id), value)).toBe(printed);
});

test("the index of 0.305 is printed as it is classed (Embrapa 1993 prints 0.31 as the first of its class)", () => {
  // 61 points in 200 snouts.
  const values = Array.from({ length: 200 }, (_, pig) => (pig < 61 ? 1 : 0));
  const [index] = herdIndices(scaleNamed("embrapa-1993"), values, { basis: "random", slaughtered: true });
  expect(index).toMatchObject({ value: 0.305, class: "slightly affected", decimals: 2 });
  expect(number(0.305)).toBe("0.31");
});

test("a mean just below a quarter is not printed as the limit (Italian batches 2010-2012: below 0.66)", () => {
  // 1319 points in 2000 lungs.
  const values = Array.from({ length: 2000 }, (_, pig) => (pig < 1319 ? 1 : 0));
  const [index] = herdIndices(scaleNamed("madec-kobisch-1982"), values, {
    basis: "random",
    slaughtered: true,
  });
  expect(index).toMatchObject({ value: 0.6595, class: "best quarter", decimals: 4 });
});

describe("rounding", () => {
  it("is half up, by the decimal value and not by its binary neighbour, and alike in tables", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -100_000, max: 100_000 }),
        fc.integer({ min: 0, max: 4 }),
        (digits, decimals) => {
          // One decimal more than is kept; exact arithmetic on whole numbers.
          const value = digits / 10 ** (decimals + 1);
          const whole = (Math.sign(digits) * Math.floor((Math.abs(digits) + 5) / 10)) / 10 ** decimals + 0;
          expect(rounded(value, decimals)).toBe(whole);
          expect(number(value, decimals)).toBe(String(whole));
          expect(Object.is(rounded(value, decimals), -0)).toBe(false);
        },
      ),
    );
  });
});
