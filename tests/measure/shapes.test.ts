/** Shapes whose area and perimeter are known in closed form, within 1e-6 relative as promised (most are far nearer). */
import { describe, expect, it } from "vitest";
import { sizeOf } from "./drawn.ts";

const promised = 1e-6;
/** What is reached: arcs are followed to 2e-11 of their radius, everything else to rounding. */
const reached = 1e-9;

function expectSize(body: string, area: number, perimeter: number, tolerance = reached): void {
  expect(tolerance).toBeLessThan(promised);
  const size = sizeOf(body);
  expect(Math.abs(size.area / area - 1)).toBeLessThan(tolerance);
  expect(Math.abs(size.perimeter / perimeter - 1)).toBeLessThan(tolerance);
}

/**
 * Perimeter of an ellipse by the arithmetic-geometric mean (Gauss; Abramowitz & Stegun 1964, 17.6): with a0 = a, b0 = b,
 * c0² = a² - b², it is 2π (a² - Σ 2^(n-1) c_n²) / agm(a, b).
 */
function ellipsePerimeter(a: number, b: number): number {
  let [x, y, factor, sum] = [a, b, 0.5, (a * a - b * b) / 2];
  for (let n = 0; n < 40; n++) {
    const c = (x - y) / 2;
    [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
    factor *= 2;
    sum += factor * c * c;
  }
  return (2 * Math.PI * (a * a - sum)) / x;
}

/** A band of even width along half circles of growing radius, with round ends: the closed form of a scroll. */
function scroll(first: number, growth: number, count: number, width: number) {
  const half = width / 2;
  const radii = Array.from({ length: count }, (_, k) => first + k * growth);
  const ends = [0];
  for (const [k, r] of radii.entries()) ends.push((ends[k] ?? 0) + 2 * r * (k % 2 === 0 ? 1 : -1));
  const sign = (k: number): number => (k % 2 === 0 ? 1 : -1);
  const outer = radii.map(
    (r, k) => `A${r + half} ${r + half} 0 0 1 ${(ends[k + 1] ?? 0) + sign(k) * half} 0`,
  );
  const inner = radii
    .map((r, k) => `A${r - half} ${r - half} 0 0 0 ${(ends[k] ?? 0) + sign(k) * half} 0`)
    .reverse();
  const last = count - 1;
  const d = [
    `M${-half} 0`,
    ...outer,
    `A${half} ${half} 0 0 1 ${(ends[count] ?? 0) - sign(last) * half} 0`,
    ...inner,
    `A${half} ${half} 0 0 1 ${-half} 0Z`,
  ].join("");
  const length = radii.reduce((sum, r) => sum + Math.PI * r, 0);
  return { d, area: width * length + Math.PI * half * half, perimeter: 2 * length + 2 * Math.PI * half };
}

const path = (d: string, more = ""): string => `<path id="cavity-left" d="${d}" ${more}/>`;

describe("round shapes", () => {
  it("a circle", () => {
    expectSize('<circle id="cavity-left" cx="3" cy="-4" r="5"/>', 25 * Math.PI, 10 * Math.PI);
  });

  it("the check by elliptic integrals knows a circle, and a flat ellipse", () => {
    expect(ellipsePerimeter(2, 2)).toBeCloseTo(4 * Math.PI, 12);
    // Perimeter of the ellipse with half axes 1 and 1/2: 4 E(m = 3/4), E from Abramowitz & Stegun, Table 17.1 (m = 0.75).
    expect(ellipsePerimeter(1, 0.5)).toBeCloseTo(4 * 1.211056028, 8);
  });

  it.each([
    [5, 2],
    [30, 1],
    [1, 7],
  ])("an ellipse with half axes %d and %d", (a, b) => {
    expectSize(
      `<ellipse id="cavity-left" rx="${a}" ry="${b}"/>`,
      Math.PI * a * b,
      ellipsePerimeter(Math.max(a, b), Math.min(a, b)),
    );
  });

  it("a circle that a transform makes an ellipse, through nested groups", () => {
    expectSize(
      '<g transform="rotate(33, 4, 5)"><g transform="translate(7)scale(4 1.5)"><circle id="cavity-left" cx="1" cy="2" r="2"/></g></g>',
      Math.PI * 8 * 3,
      ellipsePerimeter(8, 3),
    );
  });

  it("an ellipse in a large arc and its rest, written with flags that touch their neighbours", () => {
    expectSize(
      path("M6 0A6 2 0 113-1.7320508075688772A6 2 0 016 0Z"),
      Math.PI * 12,
      ellipsePerimeter(6, 2),
      1e-8,
    );
  });

  it("a half circle whose radius is too small and is enlarged", () => {
    expectSize(path("M0 0a1 1 0 0 1 10 0z"), (Math.PI * 25) / 2, 5 * Math.PI + 10);
  });

  it("a rectangle with round corners", () => {
    expectSize(
      '<rect id="cavity-left" x="1" y="2" width="20" height="10" rx="3"/>',
      200 - (4 - Math.PI) * 9,
      2 * (14 + 4) + 6 * Math.PI,
    );
  });
});

describe("a rounded spiral", () => {
  const one = scroll(3, 1.2, 6, 1.5);

  it("of half circles, as a band of even width", () => {
    expectSize(path(one.d), one.area, one.perimeter);
  });

  it("turned, moved and enlarged", () => {
    expectSize(
      `<g transform="translate(40 -3) rotate(-71.5)"><g transform="matrix(2.5 0 0 2.5 1 1)">${path(one.d)}</g></g>`,
      one.area * 6.25,
      one.perimeter * 2.5,
    );
  });

  it("mirrored", () => {
    expectSize(path(one.d, 'transform="scale(-1 1)"'), one.area, one.perimeter);
  });
});

describe("Bézier curves", () => {
  it("a parabola segment: two thirds of its box, and the closed form of its arc", () => {
    const [b, h] = [10, 5];
    const root = Math.sqrt(b * b + 16 * h * h);
    const arc = root / 2 + ((b * b) / (8 * h)) * Math.log((4 * h + root) / b);
    expectSize(path("M0 0Q5 10 10 0Z"), (2 / 3) * b * h, arc + b);
    // The same curve as a cubic.
    expectSize(
      path("M0 0C3.3333333333333333 6.6666666666666667 6.6666666666666667 6.6666666666666667 10 0Z"),
      (2 / 3) * b * h,
      arc + b,
    );
  });

  it("a cubic with a cusp: the semicubical parabola y² = x³", () => {
    // Between its branches and the line x = 1: area 4/5; its length from the cusp is (13√13 - 8) / 27 on either branch.
    expectSize(
      path("M1-1C-.3333333333333333 1-.3333333333333333-1 1 1Z"),
      4 / 5,
      (2 * (13 * Math.sqrt(13) - 8)) / 27 + 2,
    );
  });

  it("smooth commands, relative ones and lines of one coordinate", () => {
    // Two parabola segments in a row, the second by T, closed below by H and V.
    const [b, h] = [10, 5];
    const root = Math.sqrt(b * b + 16 * h * h);
    const arc = root / 2 + ((b * b) / (8 * h)) * Math.log((4 * h + root) / b);
    expectSize(path("m0 0q5 10 10 0t10 0v20h-20z"), 20 * 20, 2 * arc + 20 + 40, 1e-9);
  });
});

describe("straight shapes", () => {
  it.each([
    ['<rect id="cavity-left" width="7" height="3"/>', 21, 20],
    ['<polygon id="cavity-left" points="0,0 3,0 3,4"/>', 6, 12],
    ['<polyline id="cavity-left" points="0 0 3 0 3 4 0 0"/>', 6, 12],
    [path("M0 0 3 0 3 4z"), 6, 12],
    ['<g id="cavity-left"><polygon points="0,0 3,0 3,4"/></g>', 6, 12],
    // A shear keeps the area: the sides of 3 become the slanted ones of a parallelogram.
    ['<rect id="cavity-left" width="7" height="3" transform="skewX(45)"/>', 21, 14 + 6 * Math.SQRT2],
    ['<rect id="cavity-left" width="7" height="3" transform="skewY(-45)"/>', 21, 6 + 14 * Math.SQRT2],
  ])("%s", (body, area, perimeter) => {
    expectSize(body, area, perimeter, 1e-12);
  });
});

describe("holes", () => {
  const outer = "M0 0H10V10H0Z";
  const [same, against] = ["M3 3H7V7H3Z", "M3 3V7H7V3Z"];

  it.each([
    ["against the outer ring", `${outer}${against}`, "", 84, 56],
    ["with the outer ring, which fills it", `${outer}${same}`, "", 100, 40],
    ["with the outer ring, even-odd", `${outer}${same}`, 'fill-rule="evenodd"', 84, 56],
    ["even-odd by style", `${outer}${same}`, 'style="fill:none;fill-rule:evenodd"', 84, 56],
    ["an island in the hole", `${outer}${against}M4 4H6V6H4Z`, "", 88, 64],
    ["two pieces", `${outer}M20 0h1v1h-1z`, "", 101, 44],
  ])("%s", (_name, d, more, area, perimeter) => {
    expectSize(path(d, more), area, perimeter, 1e-12);
  });

  it("takes the fill rule from a group around", () => {
    expectSize(`<g fill-rule="evenodd">${path(`${outer}${same}`)}</g>`, 84, 56, 1e-12);
  });
});
