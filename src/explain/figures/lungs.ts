/** The lungs seen from above, head up, with what each lobe counts. */
import type { Scale, ScalePart } from "../../knowledge/index.ts";
import { line, outline, type Piece, type Point, path, text } from "./svg.ts";

const lobes = {
  left_cranial: {
    points: [
      [338, 92],
      [318, 78],
      [292, 88],
      [274, 118],
      [268, 148],
      [290, 158],
      [322, 152],
      [336, 130],
    ],
    at: [304, 124],
    label: [180, 112],
    name: "left cranial",
  },
  left_middle: {
    points: [
      [334, 164],
      [300, 166],
      [262, 164],
      [240, 188],
      [232, 220],
      [258, 232],
      [304, 226],
      [334, 208],
    ],
    at: [286, 200],
    label: [180, 196],
    name: "left middle",
  },
  left_caudal: {
    points: [
      [330, 226],
      [298, 240],
      [254, 244],
      [226, 276],
      [206, 336],
      [196, 396],
      [214, 420],
      [260, 404],
      [304, 366],
      [326, 308],
    ],
    at: [262, 340],
    label: [180, 330],
    name: "left caudal",
  },
  right_cranial: {
    points: [
      [382, 88],
      [398, 64],
      [430, 66],
      [458, 94],
      [468, 134],
      [452, 156],
      [414, 156],
      [384, 136],
    ],
    at: [424, 118],
    label: [540, 112],
    name: "right cranial",
  },
  right_middle: {
    points: [
      [386, 164],
      [424, 168],
      [462, 164],
      [486, 188],
      [494, 222],
      [466, 234],
      [416, 228],
      [386, 210],
    ],
    at: [438, 202],
    label: [540, 196],
    name: "right middle",
  },
  right_caudal: {
    points: [
      [392, 228],
      [424, 242],
      [466, 246],
      [496, 278],
      [516, 338],
      [526, 398],
      [506, 422],
      [460, 406],
      [418, 368],
      [396, 310],
    ],
    at: [460, 342],
    label: [540, 330],
    name: "right caudal",
  },
  accessory: {
    points: [
      [360, 236],
      [380, 252],
      [388, 290],
      [378, 326],
      [360, 340],
      [344, 322],
      [338, 286],
      [346, 250],
    ],
    at: [362, 292],
    label: [360, 440],
    name: "accessory, below",
  },
} as const satisfies Record<string, { points: readonly Point[]; at: Point; label: Point; name: string }>;
type Lobe = keyof typeof lobes;
const names = Object.keys(lobes) as Lobe[];

/** Whether the map has something to show: the scale reads lobe by lobe. */
export const readsLobes = (scale: Scale): boolean =>
  Object.values(scale.parts).some(({ read }) => names.some((lobe) => read.endsWith(`.${lobe}`)));

export function lungMap(scale: Scale): Piece {
  const parts = Object.values(scale.parts);
  const partOf = (lobe: Lobe): ScalePart | undefined => parts.find(({ read }) => read.endsWith(`.${lobe}`));
  const cranialPart = (side: "left" | "right"): ScalePart | undefined =>
    parts.find(({ read }) => read === `caudal_cranial_part.${side}`);
  const counts = (part: ScalePart | undefined): string =>
    part === undefined ? "–" : part.weight !== undefined ? String(part.weight) : `0–${highest(scale, part)}`;
  const drawn = names.flatMap((lobe) => {
    const { points, at, label, name } = lobes[lobe];
    const part = partOf(lobe);
    const onSide = lobe === "accessory";
    return [
      path(outline(points), `${part === undefined ? "rest" : "read"}${onSide ? " dashed" : ""}`),
      text(at[0], at[1], counts(part), { class: "ink strong", anchor: "middle" }),
      line(
        onSide ? 360 : label[0] + (label[0] < 360 ? 8 : -8),
        label[1] - (onSide ? 14 : 4),
        onSide ? 360 : at[0] + (label[0] < 360 ? -24 : 24),
        onSide ? 330 : at[1] - 4,
      ),
      text(label[0], label[1], name, { anchor: onSide ? "middle" : label[0] < 360 ? "end" : "start" }),
    ];
  });
  const cranial = (["left", "right"] as const).flatMap((side) => {
    const part = cranialPart(side);
    if (part === undefined) return [];
    const cut = side === "left" ? "M190 304L330 287" : "M390 287L530 304";
    const above = `${cut}V210H${side === "left" ? 190 : 390}Z`;
    return [
      `<clipPath id="cranial-${side}"><path d="${above}"/></clipPath>`,
      `<g clip-path="url(#cranial-${side})">${path(outline(lobes[`${side}_caudal`].points), "read")}</g>`,
      path(cut, "line dashed"),
      text(side === "left" ? 274 : 448, 276, counts(part), { class: "ink strong", anchor: "middle" }),
    ];
  });
  return {
    height: 456,
    body: [
      path("M352 20L352 84Q350 150 346 240M368 20L368 84Q370 150 374 240", "line"),
      ...[30, 44, 58, 72].map((y) => line(352, y, 368, y)),
      ...drawn,
      ...cranial,
      text(
        80,
        20,
        parts.some(({ weight }) => weight !== undefined) ? "weight of each lobe" : "points of each lobe",
        {
          class: "soft",
        },
      ),
      text(660, 20, "seen from above, head up", { class: "soft", anchor: "end" }),
    ].join("\n"),
  };
}

const highest = (scale: Scale, part: ScalePart): number =>
  part.max ??
  Math.max(...(part.steps ?? scale.steps ?? [{ value: scale.range[1] }]).flatMap(({ value }) => value ?? []));
