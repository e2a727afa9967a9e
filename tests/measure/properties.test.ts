/** What holds for every outline. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crossingOf } from "../../src/measure/crossing.ts";
import { type Contour, type Cubic, type Point, polygonal } from "../../src/measure/curve.ts";
import { Polygon } from "../../src/measure/inside.ts";
import { regionOf } from "../../src/measure/region.ts";
import { runs } from "../random.ts";
import { sizeOf } from "./drawn.ts";

/** A smooth blob around the origin: radii between 5 and 8 at even angles, joined by cubics that follow the circle. */
const blob = fc
  .array(fc.double({ min: 5, max: 8, noNaN: true }), { minLength: 6, maxLength: 12 })
  .map((radii): Cubic[] => {
    const angle = (2 * Math.PI) / radii.length;
    const reach = (4 / 3) * Math.tan(angle / 4);
    const at = (index: number, along: number): Point => {
      const [r, phi] = [radii[index % radii.length] ?? 0, angle * index];
      return {
        x: r * (Math.cos(phi) - along * Math.sin(phi)),
        y: r * (Math.sin(phi) + along * Math.cos(phi)),
      };
    };
    return radii.map((_, index) => [at(index, 0), at(index, reach), at(index + 1, -reach), at(index + 1, 0)]);
  });

const pathOf = (curves: readonly Cubic[]): string =>
  `M${curves[0]?.[0].x} ${curves[0]?.[0].y}${curves
    .map(([, b, c, d]) => `C${[b, c, d].map(({ x, y }) => `${x} ${y}`).join(" ")}`)
    .join("")}Z`;

const drawn = (curves: readonly Cubic[], transform = "") =>
  sizeOf(`<g transform="${transform}"><path id="cavity-left" d="${pathOf(curves)}"/></g>`);

const near = (found: number, expected: number): void =>
  expect(Math.abs(found / expected - 1)).toBeLessThan(1e-8);

describe("a smooth outline", () => {
  it("keeps area and perimeter when it is turned and moved", () => {
    fc.assert(
      fc.property(
        blob,
        fc.integer({ min: -360, max: 360 }),
        fc.integer({ min: -500, max: 500 }),
        (curves, turn, move) => {
          const [plain, moved] = [
            drawn(curves),
            drawn(curves, `translate(${move} ${-2 * move}) rotate(${turn})`),
          ];
          near(moved.area, plain.area);
          near(moved.perimeter, plain.perimeter);
        },
      ),
      { numRuns: runs(25) },
    );
  });

  it("scaled by s has s times the perimeter and s² times the area", () => {
    fc.assert(
      fc.property(blob, fc.double({ min: 0.05, max: 20, noNaN: true }), (curves, s) => {
        const [plain, scaled] = [drawn(curves), drawn(curves, `scale(${s})`)];
        near(scaled.area, plain.area * s * s);
        near(scaled.perimeter, plain.perimeter * s);
      }),
      { numRuns: runs(25) },
    );
  });

  it("is the same drawn the other way round", () => {
    fc.assert(
      fc.property(blob, (curves) => {
        const back = [...curves].reverse().map(([a, b, c, d]): Cubic => [d, c, b, a]);
        const [plain, reversed] = [drawn(curves), drawn(back)];
        near(reversed.area, plain.area);
        near(reversed.perimeter, plain.perimeter);
      }),
      { numRuns: runs(25) },
    );
  });

  it("has no more area than a circle of its perimeter (the isoperimetric inequality)", () => {
    fc.assert(
      fc.property(blob, (curves) => {
        const { area, perimeter } = drawn(curves);
        expect(4 * Math.PI * area).toBeLessThanOrEqual(perimeter * perimeter * (1 + 1e-9));
      }),
      { numRuns: runs(25) },
    );
  });
});

describe("a polygon", () => {
  const radii = fc.array(fc.double({ min: 1, max: 9, noNaN: true }), { minLength: 3, maxLength: 30 });
  const star = (list: readonly number[]): Point[] =>
    list.map((r, index) => ({
      x: r * Math.cos((2 * Math.PI * index) / list.length),
      y: r * Math.sin((2 * Math.PI * index) / list.length),
    }));

  it("has the area of the surveyor's formula and the sum of its sides", () => {
    fc.assert(
      fc.property(radii, (list) => {
        const points = star(list);
        const sides = points.map((p, index) => [p, points[(index + 1) % points.length] ?? p] as const);
        const twice = sides.reduce((sum, [p, q]) => sum + p.x * q.y - q.x * p.y, 0);
        const around = sides.reduce((sum, [p, q]) => sum + Math.hypot(q.x - p.x, q.y - p.y), 0);
        const { area, perimeter } = regionOf([polygonal(points, true)], "nonzero");
        near(area, Math.abs(twice) / 2);
        near(perimeter, around);
      }),
    );
  });

  it("loses the area of a smaller copy cut out of it, and gains its perimeter", () => {
    fc.assert(
      fc.property(radii, fc.double({ min: 0.1, max: 0.8, noNaN: true }), (list, s) => {
        const outer: Contour = polygonal(star(list), true);
        const inner: Contour = polygonal(star(list.map((r) => r * s)), true);
        const [whole, cut] = [regionOf([outer], "evenodd"), regionOf([outer, inner], "evenodd")];
        near(cut.area, whole.area * (1 - s * s));
        near(cut.perimeter, whole.perimeter * (1 + s));
      }),
    );
  });
});

describe("crossings", () => {
  const coordinate = fc.integer({ min: 0, max: 30 });
  const corners = fc.uniqueArray(fc.record({ x: coordinate, y: coordinate }), {
    minLength: 3,
    maxLength: 12,
    selector: ({ x, y }) => 100 * x + y,
  });

  /** Whether two closed pieces have a point in common, in whole numbers: by the signs of the four triangles. */
  function meet([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
    const turn = (p: Point, q: Point, r: Point): number =>
      Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
    const on = (p: Point, q: Point, r: Point): boolean =>
      turn(p, q, r) === 0 && (r.x - p.x) * (r.x - q.x) <= 0 && (r.y - p.y) * (r.y - q.y) <= 0;
    if (on(a, b, c) || on(a, b, d) || on(c, d, a) || on(c, d, b)) return true;
    return turn(a, b, c) !== turn(a, b, d) && turn(c, d, a) !== turn(c, d, b);
  }

  it("are found in a polygon exactly when two pieces that are no neighbours meet, or one runs back over another", () => {
    fc.assert(
      fc.property(corners, (points) => {
        const n = points.length;
        const at = (index: number): Point => points[index % n] ?? { x: 0, y: 0 };
        const piece = (index: number): readonly [Point, Point] => [at(index), at(index + 1)];
        let expected = false;
        for (let i = 0; i < n; i++) {
          const [p, q, r] = [at(i), at(i + 1), at(i + 2)];
          const straight = (q.x - p.x) * (r.y - q.y) === (q.y - p.y) * (r.x - q.x);
          if (straight && (q.x - p.x) * (r.x - q.x) + (q.y - p.y) * (r.y - q.y) < 0) expected = true;
          for (let j = i + 2; j < n; j++)
            if (!(i === 0 && j === n - 1) && meet(piece(i), piece(j))) expected = true;
        }
        expect(crossingOf([{ points, closed: true }]) !== undefined).toBe(expected);
      }),
      { numRuns: runs(2000) },
    );
  });
});

describe("a place beside an outline", () => {
  const coordinate = fc.integer({ min: 0, max: 20 });
  const point = fc.record({ x: coordinate, y: coordinate });

  it("is inside and as far away as by looking at every piece, whatever the outline does", () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 60 }), point, (points, { x, y }) => {
        let inside = false;
        let nearest = Infinity;
        for (const [index, a] of points.entries()) {
          const b = points[(index + 1) % points.length] ?? a;
          if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) inside = !inside;
          const [dx, dy] = [b.x - a.x, b.y - a.y];
          const share = ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1);
          const along = Math.min(1, Math.max(0, share));
          nearest = Math.min(nearest, Math.hypot(x - a.x - along * dx, y - a.y - along * dy));
        }
        const polygon = new Polygon(points);
        expect(polygon.holds({ x, y })).toBe(inside);
        expect(polygon.distance({ x, y }, Infinity, 0)).toBeCloseTo(nearest, 12);
      }),
      { numRuns: runs(2000) },
    );
  });
});
