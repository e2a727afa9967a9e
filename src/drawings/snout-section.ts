/** The section of the snout as SVG, in one of its states; x from the midline, from about -155 to 155, y from 0 to 290. */
import {
  basalLamella,
  bone,
  cavity,
  type Scroll,
  scrolls,
  skin,
  sutures,
  tooth,
  vomer,
} from "./snout-shapes.ts";
import type { Half, Left, State } from "./snout-states.ts";
import { curve, outline, type Point, path, stroke } from "./svg.ts";

/** Thickness of a lamella with its mucosa. */
export const thick = 9;
const rim = 2.6;
const lining = 4;

type Side = "left" | "right";
const sides: readonly Side[] = ["left", "right"];
const turned = (side: Side, points: readonly Point[]): readonly Point[] =>
  side === "left" ? points : points.map(([x, y]) => [-x, y]);
const wholeOutline = (points: readonly Point[]): string =>
  outline([
    ...points,
    ...turned("right", points)
      .toReversed()
      .filter(([x]) => x !== 0),
  ]);

/** What stands out; everything else is drawn as mere tissue. */
export type Stands = (place: `${Side}.${"dorsal" | "ventral"}` | "septum") => boolean;

/** How the air of the cavity and the outlines are drawn where they are what is measured. */
export interface Look {
  readonly air?: "air" | "read";
  readonly traced?: boolean;
}

export function section(
  { left, right, septum, lean }: State,
  stands: Stands,
  { air = "air", traced = false }: Look = {},
): string {
  const halves = { left, right };
  const drawn = sides.flatMap((side) =>
    (["dorsal", "ventral"] as const).flatMap((concha) =>
      lamellae(halves[side], concha, side === "left" ? septum : -septum).map((points) => ({
        d: curve(turned(side, points)),
        name: stands(`${side}.${concha}`) ? "seen" : "tissue",
      })),
    ),
  );
  const wall = wholeOutline(cavity);
  const [edge, edged] = traced ? [7, "trace"] : [rim, "edge"];
  const middle = curve(septumLine(septum));
  const body = [
    path(wholeOutline(skin), "body"),
    path(wall, air),
    ...drawn.map(({ d }) => stroke(d, thick + edge, edged)),
    // The bones lie over the roots of the lamellae, so that these end at the wall.
    `<path d="${wholeOutline(bone)}${wall}" fill-rule="evenodd" class="bone"/>`,
    ...sides.map((side) => path(outline(turned(side, tooth)), "rest")),
    ...(traced
      ? [stroke(wall, 3.5, "trace")]
      : [stroke(wall, lining + rim, "edge"), stroke(wall, lining, "tissue")]),
    ...drawn.map(({ d, name }) => stroke(d, thick, name)),
    ...drawn.map(({ d }) => stroke(d, 1, "edge")),
    stroke(middle, thick + 1 + (traced ? 5 : rim), edged),
    stroke(middle, thick + 1, stands("septum") ? "seen" : "tissue"),
    path(wholeOutline(vomer), "bone"),
    ...sides.flatMap((side) => sutures.map((points) => path(curve(turned(side, points)), "line"))),
  ].join("\n");
  return lean === 0
    ? body
    : `<g transform="translate(0 252) skewX(${-lean}) translate(0 -252)">\n${body}\n</g>`;
}

/** Bent off the midline most in its middle, held above and below. */
function septumLine(off: number): Point[] {
  return [
    [0, 46],
    [0, 66],
    [off * 0.5, 96],
    [off, 132],
    [off * 0.55, 168],
    [-off * 0.1, 198],
    [0, 222],
  ];
}

/** How far off the midline the septum stands at this height. */
export function septumAt(off: number, height: number): number {
  const points = septumLine(off);
  const below = points.findIndex(([, y]) => y >= height);
  const [a, b] = [points[below - 1], points[below]];
  if (a === undefined || b === undefined) return 0;
  return a[0] + ((b[0] - a[0]) * (height - a[1])) / (b[1] - a[1]);
}

/**
 * The lines along which the lamellae of a concha run, x from the midline outwards.
 * Towards a septum that stands off to this side (positive) they give way, most in the middle and not at all at the wall.
 */
export function lamellae(half: Half, concha: "dorsal" | "ventral", septum: number): Point[][] {
  const lines = concha === "dorsal" ? dorsalLines(half) : ventralLines(half);
  return lines.map((points) =>
    points.map(([x, y]): Point => [x + Math.max(0, septumAt(septum, y)) * (1 - x / 80), y]),
  );
}

const dorsalLines = ({ dorsal }: Half): Point[][] => [
  dorsal.size > 0 ? scroll(scrolls.dorsal, dorsal) : ridge(scrolls.dorsal.root),
];

function ventralLines({ upper, lower, basal }: Half): Point[][] {
  const [from = [0, 0], ...along] = basalLamella;
  const short = basalLamella.map(([x, y]): Point => [from[0] + (x - from[0]) * basal, y]);
  const shift = (short.at(-1)?.[0] ?? 0) - (along.at(-1)?.[0] ?? 0);
  const moved = (points: readonly Point[]): Point[] => points.map(([x, y]) => [x + shift, y]);
  return [
    short,
    ...(upper.size > 0 ? [moved(scroll(scrolls.upper, upper))] : []),
    ...(lower.size > 0 ? [moved(scroll(scrolls.lower, lower))] : []),
  ];
}

const ridge = (root: readonly Point[]): Point[] =>
  root.slice(0, 2).map(([x, y], index) => [x - index * 2, y]);

/** Root and spiral; a smaller one shrinks towards the end of its root. */
function scroll(
  { root, middle, radius: [first, last], from, through }: Scroll,
  { size, turns }: Left,
): Point[] {
  const [ax, ay] = root.at(-1) ?? [0, 0];
  const number = Math.max(2, Math.ceil((Math.abs(through) * turns) / 40));
  const spiral = Array.from({ length: number + 1 }, (_, index): Point => {
    const share = (index / number) * turns;
    const radius = first + (last - first) * share;
    const angle = ((from + through * share) * Math.PI) / 180;
    const [x, y] = [middle[0] + radius * Math.cos(angle), middle[1] + radius * Math.sin(angle)];
    return [ax + (x - ax) * size, ay + (y - ay) * size];
  });
  return [...root, ...spiral];
}
