/** Explanations for people, wrapped to the width of a page. */
import { type Explanation, kinds, type Section } from "../../explain/index.ts";
import { sourceLine } from "../../knowledge/index.ts";
import { visible } from "../../words/visible.ts";
import type { Style } from "../page/style.ts";

const width = 100;

export const explainText = (explanations: readonly Explanation[], style: Style): string =>
  explanations.map((one) => oneText(one, style)).join("\n");

function oneText({ kind, name, title, sections, source }: Explanation, style: Style): string {
  return [
    `${style.heading(visible(name))} (${kind})`,
    ...wrap(title, "  "),
    ...sections.flatMap((section) => ["", ...sectionLines(section, style)]),
    "",
    ...wrap(`Source: ${source === null ? "not given" : sourceLine(source)}`, ""),
  ]
    .map((line) => `${line}\n`)
    .join("");
}

function sectionLines({ heading, lines, yaml }: Section, style: Style): string[] {
  const indent = heading === null ? "" : "  ";
  const body = lines.flatMap((line) => (yaml ? [`${indent}${visible(line)}`] : wrap(line, indent)));
  return heading === null ? body : [style.heading(visible(heading)), ...body];
}

/** All names by kind, with one line each. */
export function explainListText(
  topics: readonly Pick<Explanation, "kind" | "name" | "title">[],
  style: Style,
): string {
  return kinds
    .map((kind) => ({ kind, ofKind: topics.filter((topic) => topic.kind === kind) }))
    .filter(({ ofKind }) => ofKind.length > 0)
    .map(({ kind, ofKind }) => {
      const column = Math.max(...ofKind.map(({ name }) => name.length)) + 2;
      const lines = ofKind.map(({ name, title }) => `  ${visible(name).padEnd(column)}${visible(title)}`);
      return `${[style.heading(kind), ...lines].join("\n")}\n`;
    })
    .join("\n");
}

/** Lines of at most `width` characters; those after the first are set in by two more. */
function wrap(text: string, indent: string): string[] {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(/\s+/).map(visible)) {
    const start = line.trim() === "";
    if (!start && line.length + 1 + word.length > width) {
      lines.push(line);
      line = `${indent}  ${word}`;
    } else line = start ? `${line}${word}` : `${line} ${word}`;
  }
  return [...lines, line];
}
