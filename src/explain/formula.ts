/** How a scale comes from its parts to its score: in words, and in symbols. */
import type { Scale, ScalePart } from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";
import { type Block, block } from "./described.ts";

type Step = NonNullable<Scale["steps"]>[number];
type Limit = Pick<Step, "from" | "above">;

/** `from 5`, `above 20`. */
export const limitWords = ({ from, above }: Limit): string =>
  from === undefined ? `above ${above}` : `from ${from}`;

export function formulaBlocks(scale: Scale): Block[] {
  return [
    ...block("Formula", {
      text:
        scale.combine === "rules"
          ? [words(scale)]
          : [words(scale), `score = ${symbols(scale)}`, ...extras(scale)],
      ...(scale.combine === "rules" && {
        table: { head: ["score", "when"], rows: (scale.rules ?? []).map(rule) },
        after: extras(scale),
      }),
    }),
    ...block("From the total to the grade", stepTable("total", scale.total_steps)),
  ];
}

function words({ combine, parts }: Scale): string {
  const number = Object.keys(parts).length;
  switch (combine) {
    case "sum":
      return number === 1 ? "The score is its one part." : `The sum of the ${number} parts.`;
    case "weighted-sum":
      return "The sum over the parts of weight × share in per cent / 100.";
    case "linear":
      return "A straight-line formula of the parts.";
    case "max":
      return "The worst part counts.";
    case "mean":
      return `The mean of the ${number} parts.`;
    case "rules":
      return "The first line that fits.";
  }
}

function symbols({ combine, parts, offset }: Scale): string {
  const names = Object.keys(parts);
  const sum = names.join(" + ");
  const weighted = Object.entries(parts)
    .map(([name, { weight = 1 }]) => (weight === 1 ? name : `${weight} × ${name}`))
    .join(" + ");
  switch (combine) {
    case "weighted-sum":
      return `(${weighted}) / 100`;
    case "linear":
      return `${offset === undefined ? "" : `${offset} + `}${weighted}`.replaceAll("+ -", "- ");
    case "max":
      return `the largest of ${listing(names)}`;
    case "mean":
      return `(${sum}) / ${names.length}`;
    default:
      return sum;
  }
}

const rule = ({ value, parts, at_least: least }: NonNullable<Scale["rules"]>[number]): string[] => [
  String(value),
  `${parts} part${parts === 1 ? "" : "s"} at ${least} or more`,
];

const extras = ({ bonus = [] }: Scale): string[] =>
  bonus.map(({ part, above, add }) => `${add} more where ${part} lies above ${above}.`);

export function conversionBlocks(scale: Scale): Block[] {
  const own = Object.entries(scale.parts);
  return [
    ...block("From observation to value", wordTable(scale.map)),
    ...block("Cut points", stepTable(observed(scale), scale.steps)),
    ...alike(own, ({ map }) => map).flatMap(({ names, part }) =>
      block(`From word to value: ${heading(names)}`, { ...listed(names), ...wordTable(part.map) }),
    ),
    ...alike(own, ({ unit, steps }) => steps && { unit, steps }).flatMap(({ names, part }) =>
      block(`Cut points: ${heading(names)}`, {
        ...listed(names),
        ...stepTable(part.unit ?? "observation", part.steps),
      }),
    ),
  ];
}

/** Parts with the same table, so that it stands once. */
function alike(
  parts: readonly (readonly [string, ScalePart])[],
  tableOf: (part: ScalePart) => object | undefined,
): { names: string[]; part: ScalePart }[] {
  const groups = new Map<string, { names: string[]; part: ScalePart }>();
  for (const [name, part] of parts) {
    const table = tableOf(part);
    if (table === undefined) continue;
    const key = JSON.stringify(table);
    const group = groups.get(key) ?? { names: [], part };
    group.names.push(name);
    groups.set(key, group);
  }
  return [...groups.values()];
}

const heading = (names: readonly string[]): string =>
  names.length === 1 ? (names[0] ?? "") : `${names.length} parts alike`;
const listed = (names: readonly string[]): { text?: string[] } =>
  names.length === 1 ? {} : { text: [`${names.join("; ")}.`] };

/** What the cut points are of. */
function observed({ parts }: Scale): string {
  const units = new Set(Object.values(parts).map(({ unit }: ScalePart) => unit));
  const [unit] = units;
  return units.size === 1 && unit !== undefined ? unit : "observation";
}

const wordTable = (map: ScalePart["map"] = {}): Omit<Block, "heading"> => ({
  table: {
    head: ["word", "counts"],
    rows: Object.entries(map).map(([word, value]) => [word, String(value)]),
  },
});

const stepTable = (of: string, steps: readonly Step[] = []): Omit<Block, "heading"> => ({
  table: {
    head: [`${of}, the last line that fits`, "counts"],
    rows: steps.map((step) => [limitWords(step), step.value === null ? "no grade" : String(step.value)]),
  },
});
