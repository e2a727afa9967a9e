/** The snout sawn across behind the first premolar, seen from in front: what a scale reads, and where. */
import type { Scale, ScalePart } from "../../knowledge/index.ts";
import { listing } from "../../words/listing.ts";
import { line, outline, type Piece, type Point, path, text, wrapped } from "./svg.ts";

const middle = 360;

/** Points of the pig's left half, which the reader sees on the right; the other half is its mirror image. */
const skin: readonly Point[] = [
  [360, 16],
  [420, 26],
  [466, 66],
  [486, 130],
  [488, 200],
  [474, 262],
  [430, 300],
  [360, 310],
];
const cavity: readonly Point[] = [
  [370, 62],
  [400, 58],
  [430, 80],
  [446, 122],
  [450, 176],
  [444, 222],
  [420, 244],
  [384, 248],
  [370, 232],
  [369, 150],
];
const dorsal: readonly Point[] = [
  [392, 74],
  [414, 82],
  [428, 104],
  [426, 130],
  [408, 142],
  [390, 132],
  [388, 112],
  [400, 104],
  [410, 112],
  [402, 122],
  [414, 120],
  [416, 104],
  [402, 92],
  [388, 92],
];
const ventral: readonly Point[] = [
  [444, 160],
  [424, 152],
  [400, 156],
  [384, 176],
  [384, 202],
  [400, 220],
  [424, 220],
  [436, 202],
  [430, 184],
  [412, 178],
  [402, 190],
  [408, 204],
  [418, 200],
  [420, 192],
  [426, 204],
  [414, 212],
  [394, 204],
  [394, 180],
  [412, 166],
  [440, 174],
];
const septum: readonly Point[] = [
  [360, 54],
  [366, 64],
  [364, 120],
  [363, 180],
  [367, 240],
  [360, 252],
  [353, 240],
  [357, 180],
  [356, 120],
  [354, 64],
];

const mirrored = (points: readonly Point[]): Point[] => points.map(([x, y]) => [2 * middle - x, y]);

/** Where each thing is, and where its label stands. */
const places = {
  "left.dorsal": { label: [530, 92], tip: [424, 104] },
  "left.ventral": { label: [530, 178], tip: [434, 190] },
  "right.dorsal": { label: [190, 92], tip: [296, 104] },
  "right.ventral": { label: [190, 178], tip: [286, 190] },
  septum: { label: [530, 40], tip: [364, 72] },
  "gap.left": { label: [530, 262], tip: [412, 232] },
  "gap.right": { label: [190, 262], tip: [308, 232] },
} as const satisfies Record<string, { label: Point; tip: Point }>;
type Place = keyof typeof places;
const placeNames = Object.keys(places) as Place[];

export function snoutSection(scale: Scale): Piece {
  const reads = Object.entries(scale.parts);
  const whole = !reads.some(([, { read }]) => placeNames.some((place) => place === read));
  const partAt = (place: Place): [string, ScalePart] | undefined =>
    reads.find(([, { read }]) => read === place);
  const look = (place: Place): string => (whole || partAt(place) !== undefined ? "read" : "rest");
  const labels = placeNames.flatMap((place) => {
    const found = partAt(place);
    if (found === undefined) return [];
    const { label, tip } = places[place];
    const onRight = label[0] > middle;
    const [name, { max, unit }] = found;
    const range = unit !== undefined ? ` (${unit})` : max === undefined ? "" : ` (0 to ${max})`;
    return [
      line(label[0] + (onRight ? -6 : 6), label[1] - 4, tip[0], tip[1]),
      text(label[0], label[1], `${name}${range}`, { anchor: onRight ? "start" : "end" }),
    ];
  });
  const one = listing(reads.map(([name]) => name));
  const note = whole
    ? [
        text(530, 178, "the whole section:"),
        ...wrapped(one, 22).map((words, index) =>
          text(530, 195 + index * 17, words, { class: "ink strong" }),
        ),
      ]
    : [];
  return {
    height: 346,
    body: [
      path(outline([...skin, ...mirrored(skin).reverse().slice(1, -1)]), "body"),
      path(outline(cavity), "air"),
      path(outline(mirrored(cavity)), "air"),
      path(outline(septum), look("septum")),
      ...(["left", "right"] as const).flatMap((side) => {
        const turn = side === "left" ? (points: readonly Point[]) => points : mirrored;
        return [
          path(outline(turn(dorsal)), look(`${side}.dorsal`)),
          path(outline(turn(ventral)), look(`${side}.ventral`)),
        ];
      }),
      ...(["left", "right"] as const).flatMap((side) => {
        if (partAt(`gap.${side}`) === undefined) return [];
        const [x] = places[`gap.${side}`].tip;
        return [line(x, 222, x, 246), line(x - 5, 222, x + 5, 222), line(x - 5, 246, x + 5, 246)];
      }),
      ...labels,
      ...note,
      text(270, 336, "right", { class: "soft", anchor: "middle" }),
      text(450, 336, "left", { class: "soft", anchor: "middle" }),
      text(360, 336, "seen from in front", { class: "soft", anchor: "middle" }),
    ].join("\n"),
  };
}
