/** The page of a scale as Markdown; what it says is what `carcase explain` says (src/explain/describe-scale.ts). */
import { stringify } from "yaml";
import { describeScale } from "../../src/explain/describe-scale.ts";
import type { Block } from "../../src/explain/described.ts";
import { figureName, figureTitle, scaleFigure } from "../../src/explain/figures/index.ts";
import { type Scale, sourceLine } from "../../src/knowledge/index.ts";

export function scalePage(scale: Scale): string {
  const [first, ...rest] = describeScale(scale);
  return `${[
    `# ${escaped(scale.title)}`,
    `\`${scale.id}\``,
    ...(first === undefined ? [] : [paragraphs(first.text)]),
    `Source: ${escaped(sourceLine(scale.source))}`,
    ...(scaleFigure(scale) === undefined
      ? []
      : [`![${escaped(figureTitle(scale))}](figures/${figureName(scale)})`]),
    ...rest.map(section),
    "The examples run in the test-suite. [All scales](README.md)",
  ].join("\n\n")}\n`;
}

function section({ heading, text, table, record, after }: Block): string {
  return [
    heading === null ? "" : `## ${escaped(heading)}`,
    paragraphs(text),
    table === undefined || table.rows.length === 0 ? "" : rows(table.head, table.rows),
    record === undefined
      ? ""
      : `\`\`\`yaml\n${stringify(record, { flowCollectionPadding: false, lineWidth: 110 }).trimEnd()}\n\`\`\``,
    paragraphs(after),
  ]
    .filter((part) => part !== "")
    .join("\n\n");
}

const paragraphs = (lines: readonly string[] = []): string => lines.map(escaped).join("\n\n");

/** Text that Markdown shows as it is. */
const escaped = (text: string): string => text.replaceAll(/[\\`*<|]/g, "\\$&");

function rows(head: readonly string[], body: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [line(head), line(head.map(() => "---")), ...body.map((cells) => line(cells.map(escaped)))].join(
    "\n",
  );
}

export function scaleIndex(scales: readonly Scale[]): string {
  return `# Scales

One page a scale: what is observed, the formula, the cut points, what happens exactly at them, herd indices, source and how sure it
is. These pages are made from the data files (\`npm run docs\`), and the worked examples run in the test-suite. No scale is
converted into another. A practice can [add scales of its own](house-scales.md).

${rows(["scale", "title", "scores", "source", "how sure"], [])}
${scales
  .map(
    (scale) =>
      `| [${scale.id}](${scale.id}.md) | ${[scale.title, scale.organ, scale.source.cite, scale.source.confidence].map(escaped).join(" | ")} |`,
  )
  .join("\n")}
`;
}
