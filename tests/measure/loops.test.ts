/** Outlines as drawing programs write them, in steps from point to point: sound ones are measured, and crossings found where they are. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { outlineErrors } from "../../src/measure/check-outlines.ts";
import { regionOf } from "../../src/measure/region.ts";
import { svgDrawing } from "../../src/measure/svg-tracing.ts";
import { runs } from "../random.ts";
import { svg } from "./drawn.ts";

/** The one outline of a drawing, and what is wrong with it. */
function read(path: string, transform = "") {
  const { drawing, errors } = svgDrawing(
    svg(`<path id="cavity-left" transform="${transform}" d="${path}"/>`),
  );
  const found = [...errors, ...outlineErrors(drawing)].map(({ message }) => message);
  return { found, outline: drawing.outlines[0] };
}

type Place = readonly [x: number, y: number];
/** Places in ten-thousandths, so that steps between them are exact as they are written. */
const unit = 10_000;
const decimal = (n: number): string => String(n / unit);
const step = ([x, y]: Place, [fromX, fromY]: Place): string => `${decimal(x - fromX)},${decimal(y - fromY)}`;

/** Around a middle anywhere: distances and angles that go round once. */
const star = fc
  .tuple(
    fc.array(fc.tuple(fc.integer({ min: 300, max: 900 }), fc.integer({ min: -40, max: 40 })), {
      minLength: 4,
      maxLength: 10,
    }),
    fc.integer({ min: -5_000_000, max: 5_000_000 }),
    fc.integer({ min: -5_000_000, max: 5_000_000 }),
  )
  .map(([corners, x, y]) =>
    corners.map(([r, off], index): Place => {
      const angle = ((index + off / 100) * 2 * Math.PI) / corners.length;
      return [x + Math.round(r * 300 * Math.cos(angle)), y + Math.round(r * 300 * Math.sin(angle))];
    }),
  );

/** A corner cut short by a curve: from half way to the corner to half way behind it, the corner drawing it twice. */
const twentieths = [6, 3, 1, 3, 3, 6];

it("loops in relative steps are accepted, and right to 1e-9", () => {
  fc.assert(
    fc.property(star, fc.boolean(), fc.boolean(), (corners, curved, repeated) => {
      const n = corners.length;
      const at = (index: number): Place => corners[index % n] ?? [0, 0];
      const half = (index: number): Place => [
        Math.round((at(index)[0] + at(index + 1)[0]) / 2),
        Math.round((at(index)[1] + at(index + 1)[1]) / 2),
      ];
      const start = curved ? half(0) : at(0);
      let path = `m ${step(start, [0, 0])}`;
      // Twice the area in square units of a drawing of ten-thousandths, around the start.
      let twice = 0;
      const cross = ([px, py]: Place, [qx, qy]: Place): number =>
        (px - start[0]) * (qy - start[1]) - (py - start[1]) * (qx - start[0]);
      for (let index = 0; index < (curved || repeated ? n : n - 1); index++) {
        const [from, by, to] = curved
          ? [half(index), at(index + 1), half(index + 1)]
          : [at(index), at(index), at(index + 1)];
        path += curved ? `c${step(by, from)} ${step(by, from)} ${step(to, from)}` : ` l ${step(to, from)}`;
        const four = [from, by, by, to] as const;
        const pairs = [
          [0, 1],
          [0, 2],
          [0, 3],
          [1, 2],
          [1, 3],
          [2, 3],
        ] as const;
        twice += curved
          ? pairs.reduce((sum, [a, b], k) => sum + ((twentieths[k] ?? 0) * cross(four[a], four[b])) / 10, 0)
          : cross(from, to);
      }
      const { found, outline } = read(`${path} z`);
      expect(found).toEqual([]);
      const { area } = regionOf(outline?.contours ?? [], outline?.rule ?? "nonzero");
      expect(Math.abs(area / (Math.abs(twice) / 2 / unit / unit) - 1)).toBeLessThan(1e-9);
    }),
    { numRuns: runs(2000) },
  );
});

const placeIn = (found: readonly string[]): number[] =>
  found.flatMap((message) => [...message.matchAll(/[xy] (-?[\d.e-]+)/g)].map(([, number]) => Number(number)));
const share = fc.double({ min: 0.05, max: 1, noNaN: true });
const turn = fc.double({ min: 0, max: 360, noNaN: true });
const middle = fc.tuple(
  fc.double({ min: -900, max: 900, noNaN: true }),
  fc.double({ min: -900, max: 900, noNaN: true }),
);

it("two straight lines that cross are told within 1e-6 of the place", () => {
  fc.assert(
    fc.property(
      middle,
      turn,
      fc.double({ min: 0.1, max: 3, noNaN: true }),
      fc.tuple(share, share, share, share),
      fc.double({ min: 1, max: 300, noNaN: true }),
      ([x, y], first, between, [a, b, c, d], size) => {
        const end = (angle: number, length: number): Place => [
          x + size * length * Math.cos(angle),
          y + size * length * Math.sin(angle),
        ];
        const ends = [end(first, a), end(first, -b), end(first + between, c), end(first + between, -d)];
        const steps = ends.slice(1).map(([px, py], index) => {
          const [qx, qy] = ends[index] ?? [0, 0];
          return `${px - qx},${py - qy}`;
        });
        const told = placeIn(read(`m ${ends[0]?.join()} ${steps.join(" ")} z`).found);
        expect(told).toHaveLength(2);
        expect(Math.hypot((told[0] ?? 0) - x, (told[1] ?? 0) - y)).toBeLessThan(1e-6);
      },
    ),
    { numRuns: runs(2000) },
  );
});

it("a loop in a curve is told within 1e-6 of the place", () => {
  fc.assert(
    // With its inner points at k and -k on either side of its ends a cubic meets itself where t (1 - t) = 1 / (1 + 3k).
    fc.property(
      fc.double({ min: 1.2, max: 9, noNaN: true }),
      share,
      turn,
      middle,
      (k, height, angle, [x, y]) => {
        const path = `M-10 0C${10 * k} ${20 * height} ${-10 * k} ${20 * height} 10 0L0 -30z`;
        const radians = (angle * Math.PI) / 180;
        const up = (60 * height) / (1 + 3 * k);
        const told = placeIn(read(path, `translate(${x},${y}) rotate(${angle})`).found);
        expect(told).toHaveLength(2);
        expect(
          Math.hypot(
            (told[0] ?? 0) - x + up * Math.sin(radians),
            (told[1] ?? 0) - y - up * Math.cos(radians),
          ),
        ).toBeLessThan(1e-6);
      },
    ),
    { numRuns: runs(2000) },
  );
});
