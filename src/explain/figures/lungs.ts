/** The lungs from above, head up: what each lobe counts, named in the order of the data. */

import { cranialCut, lobes } from "../../drawings/lung-shapes.ts";
import { type Lobe, lobeNames, lungs } from "../../drawings/lungs.ts";
import {
  line,
  outline,
  type Piece,
  type Point,
  path,
  placed,
  round,
  text,
  wrapped,
} from "../../drawings/svg.ts";
import type { Scale, ScalePart } from "../../knowledge/index.ts";

const middle = 360;
export function lungMap(scale: Scale): Piece {
  const parts = Object.entries(scale.parts);
  const byLobe = parts.some(([, { read }]) => lobeNames.some((lobe) => read.endsWith(`.${lobe}`)));
  const partOf = (lobe: Lobe): [string, ScalePart] | undefined =>
    parts.find(([, { read }]) => read.endsWith(`.${lobe}`));
  const cranialPart = (lobe: Lobe): [string, ScalePart] | undefined =>
    parts.find(
      ([, { read }]) => lobe.endsWith("_caudal") && read === `caudal_cranial_part.${lobe.split("_")[0]}`,
    );
  const name = (lobe: Lobe): string => `${lobe.replace("_", " ")} lobe`;
  const drawn = lobeNames.flatMap((lobe) => {
    const part = partOf(lobe);
    const cranial = cranialPart(lobe);
    const { at, y } = lobes[lobe];
    const words = part?.[0] ?? `${cranial === undefined ? "" : "rest of the "}${name(lobe)}`;
    const said = part !== undefined || !byLobe ? words : `${words}: not read`;
    return [
      ...(part === undefined ? [] : [count(at, counts(scale, part[1]))]),
      lobe === "accessory" ? below(said) : label(said, at, y),
      ...(cranial === undefined ? [] : cranialPartOf(lobe, cranial[0], counts(scale, cranial[1]))),
    ];
  });
  const words = wrapped(caption(scale, byLobe), 80);
  return {
    height: 496 + words.length * 18,
    body: [
      placed(
        lungs((lobe) => (byLobe && partOf(lobe) === undefined ? "rest" : "read")),
        middle,
        0,
      ),
      ...drawn,
      text(middle, 476, "seen from above (dorsal view), head up; the pig's left is on the left", {
        class: "soft",
        anchor: "middle",
      }),
      ...words.map((one, index) =>
        text(middle, 500 + index * 18, one, { class: "ink strong", anchor: "middle" }),
      ),
    ].join("\n"),
  };
}

const count = ([x, y]: Point, words: string): string =>
  text(middle + x, y + 5, words, { class: "ink strong", anchor: "middle" });

/** A name beside the lungs, on the side of its lobe. */
function label(words: string, [x, y]: Point, at: number): string {
  const side = Math.sign(x);
  const edge = middle + side * 196;
  const lines = wrapped(words, 21);
  return [
    line(edge - side * 5, at, middle + x + side * 22, y),
    ...lines.map((one, index) =>
      text(edge, at + 5 + index * 17, one, { anchor: side > 0 ? "start" : "end" }),
    ),
  ].join("\n");
}

/** The name of the lobe that lies below the others. */
const below = (words: string): string =>
  [
    line(middle + lobes.accessory.at[0], 434, middle + lobes.accessory.at[0], 318),
    text(middle + lobes.accessory.at[0], 450, `${words} (dashed: it lies below)`, { anchor: "middle" }),
  ].join("\n");

function cranialPartOf(lobe: Lobe, name: string, counted: string): string[] {
  const side = Math.sign(lobes[lobe].at[0]);
  const [[x1, y1], [x2, y2]] = cranialCut;
  const [from, to] = [middle + side * x1, middle + side * x2];
  const at: Point = [side * 66, 256];
  return [
    `<clipPath id="${lobe}"><path d="M${from} ${y1}L${to} ${y2}V150H${from}Z"/></clipPath>`,
    `<g clip-path="url(#${lobe})">${placed(path(outline(lobes[lobe].points), "read"), middle, 0)}</g>`,
    line(from, y1, to, y2, "line dashed"),
    count(at, counted),
    label(name, [at[0], at[1] + 4], 262),
  ];
}

const counts = (scale: Scale, part: ScalePart): string =>
  part.weight !== undefined ? String(part.weight) : `0–${highest(scale, part)}`;

const highest = (scale: Scale, part: ScalePart): number =>
  part.max ??
  Math.max(...(part.steps ?? scale.steps ?? [{ value: scale.range[1] }]).flatMap(({ value }) => value ?? []));

function caption({ parts, range }: Scale, byLobe: boolean): string {
  const all = Object.entries(parts);
  if (!byLobe) return `one ${all[0]?.[0] ?? "grade"}, ${range[0]} to ${range[1]}, for the lungs as a whole`;
  const weights = all.flatMap(([, { weight }]) => weight ?? []);
  const small = all.find(([, { read }]) => read.startsWith("lesion_size."))?.[1].zero_unless?.below;
  if (weights.length === 0)
    return `in each lobe: the points it can have${small === undefined ? "" : `; below ${small} per cent, one of them is for a lesion as large as the coin`}`;
  const sum = round(weights.reduce((before, one) => before + one, 0));
  return sum === 100
    ? "in each lobe: how many of the 100 parts of the lung it stands for"
    : `in each lobe: the points it has when all of it is affected; ${sum} together`;
}
