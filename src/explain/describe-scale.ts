/** Everything there is to say about a scale, said once: the terminal and the page of the scale print the same. */
import { type HerdIndex, organById, type Scale, type ScalePart, sourceLine } from "../knowledge/index.ts";
import { scales } from "../knowledge/scales.ts";
import { type Block, block } from "./described.ts";
import { conversionBlocks, formulaBlocks, limitWords } from "./formula.ts";
import { inline } from "./inline.ts";

/** The description of a scale, in the order in which it is read. */
export function describeScale(scale: Scale): Block[] {
  return [
    ...block(null, { text: opening(scale) }),
    ...block("What the grades mean", {
      table: { head: ["grade", "meaning"], rows: Object.entries(scale.meaning ?? {}) },
    }),
    ...block("What is read", {
      table: {
        head: ["part", "observation", "counts"],
        rows: Object.entries(scale.parts).map(partRow(scale)),
      },
    }),
    ...conversionBlocks(scale),
    ...formulaBlocks(scale),
    ...block("Exactly at a cut point", { text: [scale.boundary, ...special(scale)] }),
    ...classBlock(scale),
    ...(scale.indices ?? []).flatMap((index) => indexBlock(index, scale)),
    ...pigsBlock(scale),
    ...(scale.references ?? []).flatMap((one) =>
      block("Published values", {
        text: [
          `${one.of}: ${one.population}. ${one.limit ? "A limit that somebody set, not shown to hold elsewhere." : "No limit, and true of these pigs only."}`,
        ],
        table: {
          head: ["of", "value"],
          rows: Object.entries(one.values).map(([of, value]) => [of, String(value)]),
        },
        after: [...(one.note === undefined ? [] : [one.note]), `Source: ${sourceLine(one.source)}`],
      }),
    ),
    ...block("Marks in the matrix", { text: marks(scale) }),
    ...block("Not to be compared with", { text: notComparable(scale) }),
    ...scale.examples.flatMap(exampleBlock),
    ...(scale.herd_examples ?? []).flatMap(herdExampleBlock),
  ];
}

function opening(scale: Scale): string[] {
  const { organ, range, unit, by_default: shown, recorded_only: onlyRecorded } = scale;
  const place = organ === "pig" ? "the pig as a whole" : organById(organ)?.definition.title;
  const name = place === undefined ? organ : `${organ} (${place})`;
  return [
    `Scores ${name}, from ${range[0]} to ${range[1]}${unit === undefined ? "" : ` ${unit}`}.`,
    ...(scale.whole === true ? ["Whole grades only."] : []),
    ...(scale.nominal === true
      ? ["The grades are names without an order: pigs are counted by grade, and there is no mean."]
      : []),
    ...(onlyRecorded === undefined ? [] : [onlyRecorded]),
    ...(scale.grade_source === undefined
      ? []
      : [`A grade that was recorded on the spot rests on ${sourceLine(scale.grade_source)}.`]),
    ...(shown === "when-recorded" ? ["Shown for a visit in which one pig has something that it reads."] : []),
    ...(shown === "when-named" ? ["Shown only when it is named, with --scale or in the settings."] : []),
  ];
}

const partRow =
  ({ organ }: Scale) =>
  ([name, part]: [string, ScalePart]): string[] => [name, `${organ}.${part.read}`, counts(part)];

function counts({ weight, min, max, unit, zero_if_zero: zero, zero_unless: unless }: ScalePart): string {
  return [
    unit === undefined ? "" : `in ${unit}`,
    weight === undefined ? "" : `weight ${weight}`,
    min === undefined ? "" : `from ${min}`,
    max === undefined ? "" : `up to ${max}`,
    zero === undefined ? "" : `0 where ${zero} is 0`,
    unless === undefined ? "" : `0 unless ${unless.read} is ${condition(unless)}`,
  ]
    .filter((text) => text !== "")
    .join(", ");
}

const condition = ({ is, from, above, below }: NonNullable<ScalePart["zero_unless"]>): string =>
  [
    ...(is === undefined ? [] : [is.join(" or ")]),
    ...(from === undefined ? [] : [`${from} or more`]),
    ...(above === undefined ? [] : [`above ${above}`]),
    ...(below === undefined ? [] : [`below ${below}`]),
  ].join(" and ");

const special = (scale: Scale): string[] => [
  ...(scale.when_normal === undefined
    ? []
    : [`An organ recorded as normal counts ${scale.when_normal} in every part.`]),
  ...Object.entries(scale.requires ?? {}).map(
    ([key, values]) => `Only scored where ${key} is ${values.join(", ")}.`,
  ),
];

const limitRows = (limits: NonNullable<Scale["classes"]>): string[][] =>
  limits.map((one) => [one.name, limitWords(one)]);

const classBlock = ({ classes = [], class_source: source }: Scale): Block[] =>
  block("Classes", {
    table: { head: ["class", "score"], rows: limitRows(classes) },
    after: source === undefined || classes.length === 0 ? [] : [`Source: ${sourceLine(source)}`],
  });

function statistic({ statistic: kind, at_least: least, above }: HerdIndex, lowest: number): string {
  const such = above === undefined ? `at ${least} or more` : `above ${above}`;
  switch (kind) {
    case "mean":
      return `the mean of all pigs${lowest === 0 ? ", zeros included" : ""}: sum of the scores / n`;
    case "share":
      return `pigs ${such} / n`;
    case "severity":
      return `sum of the scores ${such} / number of those pigs`;
    case "sum-at-least-over-n":
      return `sum of the scores ${such} / n`;
  }
}

/** How many pigs a class of the herd asks for, where the scale says so. */
const pigsBlock = ({ fewest_pigs: fewest }: Scale): Block[] =>
  fewest === undefined
    ? []
    : block("How many pigs", {
        text: [
          `A class of the herd asks for ${fewest.words}. From fewer than ${fewest.value} pigs it is given with a warning.`,
        ],
        after: [`Source: ${sourceLine(fewest.source)}`],
      });

function marks({ marks: found, range: [lowest, highest] }: Scale): string[] {
  if (found === undefined) return [];
  const { healthy, worst, because } = found;
  const way =
    healthy === undefined
      ? "All values have one mark."
      : worst === undefined
        ? `They grow from ${healthy} to both ends, ${lowest} and ${highest}.`
        : `They grow from ${healthy} (healthy) to ${worst}.`;
  return [way, `Why: ${because}.`.replace(/\.\.$/, ".")];
}

const indexBlock = (index: HerdIndex, scale: Scale): Block[] =>
  block(`Herd index ${index.id}`, {
    text: [
      `${index.title}.`,
      `${statistic(index, scale.range[0])}${index.round === undefined ? "" : `, rounded to ${index.round} decimals before it is classed`}.`,
      ...(index.population === undefined ? [] : [`Classes were made from: ${index.population}.`]),
    ],
    table: { head: ["class", "index"], rows: limitRows(index.classes ?? []) },
    after: [...(index.note === undefined ? [] : [index.note]), `Source: ${sourceLine(index.source)}`],
  });

const notComparable = ({ not_comparable: others = [] }: Scale): string[] =>
  others.map((id) => {
    const title = scales.get(id)?.title;
    return title === undefined ? id : `${id} (${title})`;
  });

function exampleBlock({
  case: name,
  record,
  value,
  class: named,
  missing = [],
  bounds,
  source,
}: Scale["examples"][number]): Block[] {
  const classed = named === undefined ? "" : `, ${named}`;
  const none = bounds === undefined ? "No score" : `Score: between ${bounds.join(" and ")}${classed}`;
  const result =
    value === null
      ? [none, ...missing.map((path) => `missing: ${path}`)].join("; ")
      : `Score: ${value}${classed}`;
  return block("Worked example", {
    text: [`${name}.`],
    record,
    after: [`${result}.`, `Source: ${sourceLine(source)}`],
  });
}

const herdExampleBlock = ({
  case: name,
  counts: pigs,
  indices = {},
  index_classes = {},
  source,
}: NonNullable<Scale["herd_examples"]>[number]): Block[] =>
  block("Worked example of a herd", {
    text: [
      `${name}.`,
      `Pigs at each score: ${inline(pigs)}.`,
      ...Object.entries(indices).map(([id, value]) => `${id}: ${value}.`),
      ...Object.entries(index_classes).map(([id, named]) => `${id} is classed ${named}.`),
      `Source: ${sourceLine(source)}`,
    ],
  });
