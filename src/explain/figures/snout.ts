/** The snout sawn across behind the first premolar, seen from in front: what a scale reads, and where; an example of each grade. */

import { type Look, type Stands, section } from "../../drawings/snout-section.ts";
import { bothAt, examples, losses, normal, septa } from "../../drawings/snout-states.ts";
import { line, type Piece, type Point, placed, round, text, wrapped } from "../../drawings/svg.ts";
import type { Scale, ScalePart } from "../../knowledge/index.ts";
import { measuredFigure } from "./observation.ts";
import { panels } from "./panels.ts";

const middle = 360;
const enlarged = 1.15;
const tall = 284;

/** Where each thing is in the section, on which side its label stands, and how far down. */
const places = {
  "left.dorsal": { tip: [44, 84], side: 1, y: 96 },
  "left.ventral": { tip: [52, 168], side: 1, y: 196 },
  "right.dorsal": { tip: [-44, 84], side: -1, y: 96 },
  "right.ventral": { tip: [-52, 168], side: -1, y: 196 },
  septum: { tip: [2, 54], side: 1, y: 36 },
  "gap.left": { tip: [48, 232], side: 1, y: 282 },
  "gap.right": { tip: [-48, 232], side: -1, y: 282 },
} as const satisfies Record<string, { tip: Point; side: 1 | -1; y: number }>;
type Place = keyof typeof places;
const placeNames = Object.keys(places) as Place[];

/** The anatomy, named where a scale reads the section as a whole. */
const anatomy: readonly { name: string; tip: Point; side: 1 | -1; y: number }[] = [
  { name: "dorsal concha", tip: [50, 86], side: 1, y: 84 },
  { name: "ventral concha:", tip: [0, 0], side: 1, y: 142 },
  { name: "upper scroll", tip: [66, 132], side: 1, y: 162 },
  { name: "basal lamella", tip: [64, 168], side: 1, y: 196 },
  { name: "lower scroll", tip: [68, 206], side: 1, y: 230 },
  { name: "hard palate", tip: [44, 246], side: 1, y: 284 },
  { name: "septum", tip: [2, 54], side: 1, y: 36 },
  { name: "nasal bone", tip: [-24, 33], side: -1, y: 36 },
  { name: "dorsal meatus", tip: [-14, 56], side: -1, y: 76 },
  { name: "middle meatus", tip: [-26, 104], side: -1, y: 116 },
  { name: "common meatus", tip: [-10, 160], side: -1, y: 160 },
  { name: "root of the canine", tip: [-104, 204], side: -1, y: 214 },
  { name: "ventral meatus", tip: [-65, 225], side: -1, y: 262 },
  { name: "vomer", tip: [-12, 239], side: -1, y: 302 },
];

export function snoutFigure(scale: Scale): Piece[] {
  return [labelled(scale), ...gradesDrawn(scale), ...partsDrawn(scale)];
}

function labelled(scale: Scale): Piece {
  const reads = Object.entries(scale.parts);
  const partAt = (place: Place): [string, ScalePart] | undefined =>
    reads.find(([, { read }]) => read === place);
  const named = placeNames.filter((place) => partAt(place) !== undefined);
  const { stands, look, words } = whatIsRead(scale, named);
  const labels =
    named.length === 0
      ? anatomy.map(({ name, tip, side, y }) => label(name, tip, side, y))
      : named.flatMap((place) => {
          const { tip, side, y } = places[place];
          const [name, { max, unit }] = partAt(place) ?? [place, {}];
          const range = unit ?? (max === undefined ? "" : `0 to ${max}`);
          return [label(range === "" ? name : `${name}\n(${range})`, tip, side, y)];
        });
  const foot = tall * enlarged + 34;
  return {
    height: foot + words.length * 18 + 8,
    body: [
      placed(section(normal, stands, look), middle, 12, enlarged),
      ...labels,
      ...[-1, 1].map((side) =>
        text(middle + side * 130, foot - 4, side < 0 ? "pig's right" : "pig's left", {
          class: "soft",
          anchor: "middle",
        }),
      ),
      text(middle, foot - 4, "seen from in front", { class: "soft", anchor: "middle" }),
      ...words.map((one, index) =>
        text(middle, foot + 20 + index * 18, one, { class: "ink strong", anchor: "middle" }),
      ),
    ].join("\n"),
  };
}

function label(name: string, [x, y]: Point, side: 1 | -1, at: number): string {
  const edge = middle + side * 186;
  const anchor = side > 0 ? "start" : "end";
  const lines = name.split("\n").map((words, index) => text(edge, at + 5 + index * 17, words, { anchor }));
  return [
    ...(x === 0 && y === 0 ? [] : [line(edge - side * 5, at, middle + x * enlarged, 12 + y * enlarged)]),
    ...lines,
  ].join("\n");
}

interface Reading {
  readonly stands: Stands;
  readonly look: Look;
  readonly words: readonly string[];
}

/** What is made to stand out, and the line below that says so. */
function whatIsRead(scale: Scale, named: readonly Place[]): Reading {
  if (named.length > 0) return { stands: (place) => named.some((one) => one === place), look: {}, words: [] };
  const figure = measuredFigure(scale);
  if (figure === undefined) {
    const [name = "grade", part] = Object.entries(scale.parts)[0] ?? [];
    return {
      stands: () => true,
      look: {},
      words: [`one ${name}, 0 to ${round(part?.max ?? scale.range[1])}, for the section as a whole`],
    };
  }
  const conchae = figure.key === "concha_area_fraction";
  return {
    stands: (place) => conchae && place !== "septum",
    look: {
      air: figure.key === "free_area_percent" ? "read" : "air",
      traced: figure.key === "perimeter_ratio",
    },
    words: wrapped(figure.look, 80),
  };
}

const drawnNote =
  "One example of each grade, drawn for this page; the order of loss is from memory. It is no limit, and no published picture.";

function gradesDrawn({ id, meaning = {} }: Scale): Piece[] {
  const states = examples[id];
  if (states === undefined) return [];
  const list = states.map((state, grade) => ({
    name: `grade ${grade}`,
    words: meaning[String(grade)] ?? "",
    body: section(state, () => true),
  }));
  const grid = states.length > 4 ? { across: 3, scale: 0.7 } : { across: 4, scale: 0.56 };
  return [panels("What the grades can look like", list, { ...grid, tall }, [drawnNote])];
}

/** Where each concha has a grade of its own: both conchae at each grade, and the septum at each word. */
function partsDrawn({ parts, meaning = {} }: Scale): Piece[] {
  const reads = Object.values(parts);
  if (!reads.some(({ read }) => read === "left.ventral")) return [];
  const septum = reads.find(({ read }) => read === "septum")?.map;
  return [
    panels(
      "A concha at each grade (here all four alike)",
      losses.map((half, grade) => ({
        name: `grade ${grade}`,
        words: meaning[String(grade)] ?? "",
        body: section(bothAt(half), (place) => place !== "septum"),
      })),
      { across: 5, tall, scale: 0.45 },
      septum === undefined ? [drawnNote] : [],
    ),
    ...(septum === undefined
      ? []
      : [
          panels(
            "The septum",
            Object.entries(septa).map(([word, off]) => ({
              name: `${word}: ${septum[word] ?? "no grade"}`,
              words: "",
              body: section({ ...normal, septum: off }, (place) => place === "septum"),
            })),
            { across: 5, tall, scale: 0.45 },
            [drawnNote],
          ),
        ]),
  ];
}
