/** Explanations for people. */
import { type Explanation, type Kind, kindGroups, lists, type Section } from "../../explain/index.ts";
import { sourceLine } from "../../knowledge/index.ts";
import { visible } from "../../words/visible.ts";
import { type Block, gap, heading, table, text, verbatim } from "../page/blocks.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { displayWidth, fitted, padded } from "../page/width.ts";

export const explainText = (explanations: readonly Explanation[], style: Style, width = 80): string =>
  textOf(explanations.flatMap(blocksOf), style, width);

const blocksOf = ({ kind, name, title, sections, source }: Explanation): Block[] => [
  heading(`${name} (${kind})`),
  text(title, { hang: 2 }),
  ...sections.flatMap(sectionBlocks),
  // What a case says is said by whoever wrote it; of a disease every statement has its own source.
  ...(kind === "case" || kind === "disease"
    ? []
    : [gap, text(`Source: ${source === null ? "not given" : sourceLine(source)}`, { indent: 0, hang: 2 })]),
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

type Named = Pick<Explanation, "kind" | "name" | "title">;

/** What kinds of names there are, and how to ask for one. */
export function explainKindsText(topics: readonly Named[], style: Style, width: number): string {
  const counted = (kind: string, list: string): string =>
    `${list} (${topics.filter((one) => one.kind === kind).length})`;
  const rows = Object.entries(kindGroups).map(([group, of]) => [
    group,
    Object.entries(of)
      .map(([kind, list]) => counted(kind, list))
      .join(", "),
  ]);
  const blocks = [
    text("carcase explain NAME says what a name means and who says so: a rule, a scale, an organ, a word.", {
      indent: 0,
    }),
    text("carcase explain KIND lists all names of a kind, such as carcase explain rules. Kinds are:", {
      indent: 0,
    }),
    gap,
    ...table([{ head: "" }, { head: "" }], rows),
  ];
  return textOf(blocks, style, width);
}

/** All names of one kind, a line each. */
export function explainListText(kind: Kind, topics: readonly Named[], style: Style, width: number): string {
  const ofKind = topics.filter((topic) => topic.kind === kind);
  const longest = Math.max(0, ...ofKind.map(({ name }) => displayWidth(visible(name))));
  const lines = ofKind.map(({ name, title }) => {
    const begin = `  ${padded(visible(name), longest)}  `;
    return `${begin}${fitted(firstSentence(visible(title)), Math.max(20, width - displayWidth(begin)))}`.trimEnd();
  });
  return textOf(
    [heading(`${lists.get(kind)} (${ofKind.length})`), ...lines.map((line) => verbatim(line))],
    style,
    width,
  );
}

/** `Pus in a cavity.` of a title in several sentences. */
const firstSentence = (title: string): string => /^.*?[.](?= [A-Z])/.exec(title)?.[0] ?? title;
