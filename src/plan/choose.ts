/** Which pigs? */
import { choosingPigs } from "../knowledge/index.ts";
import { count } from "../words/listing.ts";
import { draw, frameHash, generatorName } from "./draw.ts";
import type { Unit } from "./frame.ts";
import { type Cell, cautionsOf, type Plan } from "./plan.ts";
import { generatorSource } from "./sources.ts";

/** A draw that is asked for. */
export interface ChooseQuestion {
  readonly frame: readonly Unit[];
  /** What the list holds: ear tags, or the pigs or pens of groups. */
  readonly unit: "tags" | "pigs" | "pens";
  /** How many to draw. */
  readonly take: number;
  /** How many more as a reserve, in the order of the draw; none when left out. */
  readonly reserve?: number;
  /** 0 to 9 007 199 254 740 991. */
  readonly seed: number;
  /** Draw these numbers from each group. */
  readonly each?: boolean;
}

/**
 * A random draw from a list, with what is needed to repeat it: seed, generator, SHA-256 of the list.
 *
 * @throws RangeError when more are wanted than there are, or the seed is out of its range.
 */
export function planChoose({ frame, unit, take, reserve = 0, seed, each = false }: ChooseQuestion): Plan {
  const drawn = draw(frame, { take, reserve, seed, each });
  const hash = frameHash(frame);
  const one = unit === "pens" ? "pen" : "pig";
  const cells = (place: number, order: number, use: string): Record<string, Cell> => ({
    use,
    drawn: order + 1,
    ...(unit === "tags" ? { line: place + 1 } : { group: frame[place]?.group ?? null }),
    tag: frame[place]?.tag ?? null,
  });
  const chosen = drawn.chosen.map((place, order) => ({ place, cells: cells(place, order, "examine") }));
  const rows = [
    ...chosen.sort((a, b) => a.place - b.place).map((row) => row.cells),
    ...drawn.reserve.map((place, order) => cells(place, order, "reserve")),
  ];
  return {
    plan: "choose",
    title: `${count(drawn.chosen.length, one)} drawn at random`,
    asked: { unit, take, reserve, each: each ? "yes" : "no", seed },
    answer: { list: frame.length, chosen: drawn.chosen.length, generator: generatorName, list_sha256: hash },
    sentences: [
      `${count(drawn.chosen.length, one)} of ${frame.length} ${drawn.chosen.length === 1 ? "was" : "were"} drawn at random, each as likely as every other${each ? " of its group" : ""}.${reserve > 0 ? ` The reserve is to be used in its order.` : ""}`,
      ...(unit === "pigs"
        ? [
            "A number is the place of the pig when its group is counted through, pen by pen, in an order fixed before the draw.",
          ]
        : []),
      ...(unit === "pens"
        ? ["Pens are numbered as on the farm; which pigs of a drawn pen are examined must be drawn too."]
        : []),
      `To repeat it: seed ${seed}; generator ${generatorName}; SHA-256 of the list ${hash}.`,
    ],
    table: {
      title: "Drawn",
      columns: [
        { key: "use", head: "", as: "text" },
        { key: "drawn", head: "drawn as", as: "count" },
        ...(unit === "tags"
          ? [{ key: "line", head: "place in list", as: "count" as const }]
          : [{ key: "group", head: "group", as: "text" as const }]),
        { key: "tag", head: unit === "tags" ? "tag" : one, as: "text" },
      ],
      rows,
    },
    cautions: cautionsOf(
      "draw-frame",
      "draw-not-diagnosis",
      ...(unit === "pens" ? ["pens-alike" as const] : []),
    ),
    sources: [generatorSource],
  };
}

/** The rules for choosing pigs for a diagnostic necropsy, as a list to print and tick off. */
export function planDiagnostic(): Plan {
  const { diagnostic } = choosingPigs;
  return {
    plan: "choose",
    title: "Choosing pigs for a diagnostic necropsy",
    asked: { diagnostic: "yes" },
    answer: { rules: diagnostic.length },
    sentences: [],
    steps: diagnostic,
    table: {
      title: "Rules",
      columns: [
        { key: "rule", head: "rule", as: "text" },
        { key: "do", head: "do", as: "text" },
        { key: "why", head: "why", as: "text" },
        { key: "source", head: "source", as: "text" },
        { key: "confidence", head: "confidence", as: "text" },
      ],
      rows: diagnostic.map(({ id, do: what, why, source }) => ({
        rule: id,
        do: what,
        why,
        source: source.cite,
        confidence: source.confidence,
      })),
    },
    cautions: cautionsOf("not-random"),
    sources: [],
  };
}
