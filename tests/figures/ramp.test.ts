/** The steps of the figures: far enough apart for every eye and for a printer without colour. */
import {
  type Color,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  rgb,
  wcagContrast,
} from "culori";
import { describe, expect, it } from "vitest";
import { inkOn, ramp, stepOfGrade, stepOfShare } from "../../src/figures/ramp.ts";

/** A colour as an eye sees it. */
const seenBy =
  (filter: (colour: Color) => Color | undefined) =>
  (colour: string): Color | undefined => {
    const read = rgb(colour);
    return read && filter(read);
  };
const eyes: Readonly<Record<string, (colour: string) => Color | undefined>> = {
  "the usual eye": rgb,
  "an eye without green": seenBy(filterDeficiencyDeuter(1)),
  "an eye without red": seenBy(filterDeficiencyProt(1)),
  "an eye without blue": seenBy(filterDeficiencyTrit(1)),
};
const pairs = ramp.flatMap((one, index) => ramp.slice(index + 1).map((other) => [one, other] as const));

describe("the ramp", () => {
  it.each(Object.entries(eyes))("is told apart by %s", (_, seen) => {
    const apart = differenceCiede2000();
    for (const [one, other] of pairs)
      expect(apart(seen(one) ?? one, seen(other) ?? other), `${one} ${other}`).toBeGreaterThan(12);
  });

  it("is told apart in grey, step by step", () => {
    for (const [index, step] of ramp.slice(1).entries())
      expect(wcagContrast(ramp[index] ?? step, step), step).toBeGreaterThan(1.5);
  });

  it("is written on in ink that can be read", () => {
    for (const [index, step] of ramp.entries())
      expect(wcagContrast(step, inkOn(index)), step).toBeGreaterThan(4.5);
  });

  it("keeps the first step for none and the last for the most", () => {
    expect([0, 0.01, 0.25, 0.26, 0.5, 0.75, 0.76, 1].map(stepOfShare)).toEqual([0, 1, 1, 2, 2, 3, 4, 4]);
    expect([0, 1, 2, 3, 4, 5].map((grade) => stepOfGrade(grade, 5))).toEqual([0, 1, 2, 2, 3, 4]);
    expect([0, 1, 2, 3].map((grade) => stepOfGrade(grade, 3))).toEqual([0, 1, 3, 4]);
  });
});
