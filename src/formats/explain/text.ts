/** Explanations for people. */
import { type Explanation, kinds, type Section } from "../../explain/index.ts";
import { sourceLine } from "../../knowledge/index.ts";
import { type Block, gap, heading, table, text, verbatim } from "../page/blocks.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

export const explainText = (explanations: readonly Explanation[], style: Style): string =>
  textOf(explanations.flatMap(blocksOf), style);

const blocksOf = ({ kind, name, title, sections, source }: Explanation): Block[] => [
  heading(`${name} (${kind})`),
  text(title, { hang: 2 }),
  ...sections.flatMap(sectionBlocks),
  gap,
  text(`Source: ${source === null ? "not given" : sourceLine(source)}`, { indent: 0, hang: 2 }),
];

function sectionBlocks({ heading: title, lines, yaml }: Section): Block[] {
  const indent = title === null ? 0 : 2;
  return [
    ...(title === null ? [gap] : [heading(title)]),
    ...lines.map((line) =>
      yaml ? verbatim(`${" ".repeat(indent)}${line}`) : text(line, { indent, hang: 2 }),
    ),
  ];
}

/** All names by kind, with one line each. */
export const explainListText = (
  topics: readonly Pick<Explanation, "kind" | "name" | "title">[],
  style: Style,
): string =>
  textOf(
    kinds.flatMap((kind) => {
      const ofKind = topics.filter((topic) => topic.kind === kind);
      const names = table(
        [{ head: "" }, { head: "" }],
        ofKind.map(({ name, title }) => [name, title]),
      );
      return names.length === 0 ? [] : [heading(kind), ...names];
    }),
    style,
  );
