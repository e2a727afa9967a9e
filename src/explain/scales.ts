/** How a scale comes to its score, and what its numbers mean. */
import { type ClassLimit, type HerdIndex, type Scale, scales, sourceLine } from "../knowledge/index.ts";
import { section, type Topic } from "./explanation.ts";
import { inline } from "./inline.ts";

export const scaleTopics: readonly Topic[] = [...scales.values()].map((scale) => ({
  kind: "scale",
  name: scale.id,
  title: scale.title,
  aliases: [],
  explain: () => ({
    sections: [
      ...section(null, [
        `Scores ${scale.organ}, from ${scale.range[0]} to ${scale.range[1]}${scale.unit ?? ""}.`,
      ]),
      ...section(
        "What the grades mean",
        Object.entries(scale.meaning ?? {}).map(([grade, text]) => `${grade}: ${text}`),
      ),
      ...section("What is added up", parts(scale)),
      ...section("From observation to value", conversion(scale)),
      ...section("How it is added up", combination(scale)),
      ...section("At the cut points", [
        scale.boundary,
        ...(scale.when_normal === undefined
          ? []
          : [`An organ recorded as normal counts ${scale.when_normal} in every part.`]),
        ...Object.entries(scale.requires ?? {}).map(
          ([key, values]) => `Only scored where ${key} is ${values.join(", ")}.`,
        ),
      ]),
      ...section("Classes", [
        ...(scale.classes ?? []).map(limit),
        ...(scale.class_source === undefined ? [] : [`Source: ${sourceLine(scale.class_source)}`]),
      ]),
      ...(scale.indices ?? []).flatMap((index) => section(`Herd index ${index.id}`, herdIndex(index))),
      ...section("Not to be compared with", scale.not_comparable ?? []),
      ...section("Worked examples", scale.examples.map(example)),
    ],
    source: scale.source,
  }),
}));

const parts = (scale: Scale): string[] =>
  Object.entries(scale.parts).map(([name, part]) => {
    const counts =
      part.weight !== undefined ? `weight ${part.weight}` : part.max !== undefined ? `up to ${part.max}` : "";
    return `${name}: ${scale.organ}.${part.read}${counts === "" ? "" : `, ${counts}`}`;
  });

function conversion(scale: Scale): string[] {
  const words: Record<string, number> = { ...scale.map };
  for (const part of Object.values(scale.parts)) Object.assign(words, part.map);
  return [
    ...Object.entries(words).map(([word, value]) => `${word} counts ${value}`),
    ...(scale.steps ?? []).map(
      ({ from, above, value }) => `${from === undefined ? `above ${above}` : `from ${from}`} counts ${value}`,
    ),
  ];
}

function combination(scale: Scale): string[] {
  if (scale.combine === "sum") return ["The sum of the parts."];
  if (scale.combine === "weighted-sum")
    return ["The sum of weight x share in per cent / 100 over the parts."];
  return (scale.rules ?? []).map(
    ({ value, parts: number, at_least: least }) =>
      `${value} when ${number} part${number === 1 ? "" : "s"} reach${number === 1 ? "es" : ""} ${least} (the first line that fits)`,
  );
}

const limit = ({ name, from, above }: ClassLimit): string =>
  `${name}: ${from === undefined ? `above ${above}` : `from ${from}`}`;

const statistics: Record<HerdIndex["statistic"], string> = {
  mean: "mean of all pigs, zeros included",
  share: "share of pigs at the limit or more",
  severity: "sum of the scores / number of pigs at the limit or more",
  "sum-at-least-over-n": "sum of the scores at the limit or more / number of all pigs",
};

const herdIndex = (index: HerdIndex): string[] => [
  `${index.title}: ${statistics[index.statistic]}${index.at_least === undefined ? "" : ` (limit ${index.at_least})`}.`,
  ...(index.population === undefined ? [] : [`Classes were made from: ${index.population}.`]),
  ...(index.classes ?? []).map(limit),
  ...(index.note === undefined ? [] : [index.note]),
  `Source: ${sourceLine(index.source)}`,
];

function example({
  case: name,
  record,
  value,
  class: named,
  missing,
  source,
}: Scale["examples"][number]): string {
  const result =
    value === null
      ? `no score, missing ${(missing ?? []).join(", ")}`
      : `${value}${named === undefined ? "" : `, ${named}`}`;
  return `${name}: ${inline(record)} gives ${result} (${source.cite})`;
}
