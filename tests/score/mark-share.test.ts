/** Marks of the matrix grow from the healthy end, whichever it is. */
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { markCharacter } from "../../src/formats/score/matrix-marks.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { markShare } from "../../src/score/index.ts";
import { runs } from "../random.ts";
import { scaleNamed } from "./pigs.ts";

const share = (id: string, value: number) => markShare(scaleNamed(id), value);

test.each([
  // The ratio falls with atrophy: means of visual grades 0 to 3 of Collins, Backstrom & Brim 1989.
  ["collins-1989-perimeter", [1.54, 1.25, 0.97, 0.73]],
  ["collins-1989-area", [0.6, 0.4, 0.2]],
  ["done-1984", [41.12, 50.77, 80]],
  ["body-condition", [3, 2, 1]],
  ["body-condition", [3, 4, 5]],
  ["sobestiansky-1990-lungs", [1, 2, 3, 4]],
  ["stomach-index-2016", [2, 5, 8, 12]],
  ["rutter-1984", [-5, 3, 12, 30]],
  ["maff-1978", [0, 1, 2, 3, 4, 5]],
])("%s: marks grow from the healthy to the worst, %j", (id, values) => {
  const shares = values.map((value) => share(id, value));
  expect(shares).toEqual([...shares].sort((a, b) => Number(a) - Number(b)));
  expect(new Set(shares).size).toBe(values.length);
});

test.each([
  ["collins-1989-perimeter", 1.54, 0],
  ["collins-1989-perimeter", 1.7, 0],
  ["collins-1989-perimeter", 0.6, 1],
  ["collins-1989-perimeter", 1.135, 0.5],
  ["body-condition", 3, 0],
  ["body-condition", 1, 1],
  ["body-condition", 4, 0.5],
  ["danish-joints-1995", 1, 0],
  ["danish-joints-1995", 3, 0.5],
  ["stomach-index-2016", 2, 0],
  ["stomach-index-2016", 7, 0.5],
  ["rutter-1984", 0, 0],
])("%s at %d has %d of the mark", (id, value, expected) => {
  expect(share(id, value)).toBeCloseTo(Number(expected), 12);
});

test("where no value is healthier than another there is no order", () => {
  for (const value of [0, 1, 2]) expect(share("lung-float", value)).toBe("no order");
  expect(share("ullrey-1965", 80)).toBe("no order");
  expect([0, 1, 4].map((value) => share("carcass-abscess", value))).toEqual([0, "no order", "no order"]);
});

describe.each([...scales.values()].map((scale) => [scale.id, scale] as const))("%s", (_, scale) => {
  it("has a mark from 0 to 1, or none, for any of its values", () => {
    const [min, max] = scale.range;
    fc.assert(
      fc.property(fc.double({ min, max, noNaN: true }), (value) => {
        const found = markShare(scale, value);
        expect(found === "no order" || (found >= 0 && found <= 1)).toBe(true);
      }),
      { numRuns: runs(50) },
    );
  });
});

test("one lobe at 5 of 28 is told from a clean lung, and both from a lung that was not scored", () => {
  for (const alphabet of ["unicode", "ascii"] as const) {
    const marks = [
      share("madec-kobisch-1982", 0),
      share("madec-kobisch-1982", 1),
      share("madec-kobisch-1982", 5),
    ];
    const drawn = [...marks, "not recorded" as const].map((mark) => markCharacter(mark, alphabet));
    expect(new Set(drawn).size).toBe(4);
  }
});
