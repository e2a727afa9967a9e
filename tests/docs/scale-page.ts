/** The page of a scale, made from its data file. */
import { stringify } from "yaml";
import { sourceLine } from "../../src/knowledge/index.ts";
import type { ClassLimit, HerdIndex, Scale, ScalePart } from "../../src/knowledge/index.ts";

export function scalePage(scale: Scale): string {
  const sections = [
    `# ${scale.title}`,
    `\`${scale.id}\`, scores \`${scale.organ}\`, from ${scale.range[0]} to ${scale.range[1]}${scale.unit ?? ""}.`,
    `Source: ${sourceLine(scale.source)}`,
    scale.meaning === undefined
      ? ""
      : `## What the grades mean\n\n${rows(["grade", "meaning"], Object.entries(scale.meaning))}`,
    `## What is added up\n\n${parts(scale)}`,
    conversion(scale),
    `## How it is added up\n\n${combination(scale)}`,
    `## At the cut points\n\n${scale.boundary}`,
    scale.when_normal === undefined
      ? ""
      : `An organ recorded as normal counts ${scale.when_normal} in every part.`,
    scale.requires === undefined
      ? ""
      : Object.entries(scale.requires)
          .map(([key, values]) => `Only scored where \`${key}\` is ${values.join(", ")}.`)
          .join("\n"),
    scale.classes === undefined
      ? ""
      : `## Classes\n\n${classes(scale.classes)}${scale.class_source === undefined ? "" : `\n\nSource: ${sourceLine(scale.class_source)}`}`,
    (scale.indices ?? []).length === 0
      ? ""
      : `## Herd indices\n\n${(scale.indices ?? []).map(indexSection).join("\n\n")}`,
    scale.not_comparable === undefined
      ? ""
      : `## Not to be compared with\n\n${scale.not_comparable.join(", ")}`,
    `## Worked examples\n\n${scale.examples.map(example).join("\n\n")}`,
    ...(scale.herd_examples ?? []).map(
      (herd) =>
        `${herd.case}: ${Object.entries(herd.indices ?? {})
          .map(([id, value]) => `${id} ${value}`)
          .concat(Object.entries(herd.index_classes ?? {}).map(([id, name]) => `${id} is classed ${name}`))
          .join(", ")}. Source: ${sourceLine(herd.source)}`,
    ),
    "These examples run in the test-suite.\n\n[All scales](README.md)",
  ];
  return `${sections.filter((section) => section !== "").join("\n\n")}\n`;
}

function rows(head: readonly string[], body: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [line(head), line(head.map(() => "---")), ...body.map(line)].join("\n");
}

function parts(scale: Scale): string {
  const cell = ([name, part]: [string, ScalePart]): string[] => [
    name,
    `\`${scale.organ}.${part.read}\``,
    part.weight === undefined ? `up to ${part.max ?? "–"}` : `weight ${part.weight}`,
  ];
  return rows(["part", "observation", "counts"], Object.entries(scale.parts).map(cell));
}

function conversion(scale: Scale): string {
  const words = { ...scale.map };
  for (const part of Object.values(scale.parts)) Object.assign(words, part.map);
  const mapped = Object.entries(words).map(([word, value]) => [word, String(value)]);
  const steps = (scale.steps ?? []).map(({ from, above, value }) => [
    from === undefined ? `above ${above}` : `${from} and more`,
    String(value),
  ]);
  return [
    mapped.length === 0 ? "" : rows(["word", "value"], mapped),
    steps.length === 0 ? "" : rows(["per cent of the part (the last line that fits)", "value"], steps),
  ]
    .filter((text) => text !== "")
    .join("\n\n");
}

function combination(scale: Scale): string {
  if (scale.combine === "sum") return "The sum of the parts.";
  if (scale.combine === "weighted-sum") return "The sum of weight × share in per cent / 100 over the parts.";
  return `The first line that fits:\n\n${rows(
    ["score", "when"],
    (scale.rules ?? []).map((rule) => [
      String(rule.value),
      `${rule.parts} part${rule.parts === 1 ? "" : "s"} at ${rule.at_least} or more`,
    ]),
  )}`;
}

const classes = (limits: readonly ClassLimit[]): string =>
  rows(
    ["class", "from"],
    limits.map(({ name, from, above }) => [name, from === undefined ? `above ${above}` : `${from}`]),
  );

const statistics: Record<HerdIndex["statistic"], (index: HerdIndex) => string> = {
  mean: () => "mean of all pigs, zeros included",
  share: (index) => `share of pigs at ${index.at_least} or more`,
  severity: (index) => `sum of the scores / number of pigs at ${index.at_least} or more`,
  "sum-at-least-over-n": (index) => `sum of the scores at ${index.at_least} or more / number of all pigs`,
};

function indexSection(index: HerdIndex): string {
  const population = index.population === undefined ? "" : ` Classes were made from: ${index.population}.`;
  return [
    `### ${index.title}\n\n\`${index.id}\`: ${statistics[index.statistic](index)}${index.round === undefined ? "" : `, rounded to ${index.round} decimals before it is classed`}.${population}`,
    index.classes === undefined ? "" : classes(index.classes),
    `Source: ${sourceLine(index.source)}`,
    index.note ?? "",
  ]
    .filter((text) => text !== "")
    .join("\n\n");
}

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
      ? `No score; missing: ${(missing ?? []).map((path) => `\`${path}\``).join(", ")}.`
      : `Score: ${value}${named === undefined ? "" : `, ${named}`}.`;
  const text = stringify(record, { flowCollectionPadding: false, lineWidth: 110 }).trimEnd();
  return `${name[0]?.toUpperCase()}${name.slice(1)}:\n\n\`\`\`yaml\n${text}\n\`\`\`\n\n${result} Source: ${sourceLine(source)}`;
}

export function scaleIndex(scales: readonly Scale[]): string {
  return `# Scales

One page a scale: what is observed, the cut points, what happens exactly at them, herd indices, source and how sure it is. These
pages are made from the data files (\`npm run docs\`), and the worked examples run in the test-suite. No scale is converted
into another.

${rows(
  ["scale", "title", "scores", "source", "how sure"],
  scales.map((scale) => [
    `[${scale.id}](${scale.id}.md)`,
    scale.title,
    scale.organ,
    scale.source.cite,
    scale.source.confidence,
  ]),
)}
`;
}
