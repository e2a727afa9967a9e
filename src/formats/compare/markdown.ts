/** A comparison as Markdown, to go into a report or an e-mail. */
import { type Compared, type CompareReport, pText } from "../../compare/index.ts";
import { markdownTable, markdownText } from "../page/markdown.ts";
import { marked, memoryLegend } from "../page/memory-mark.ts";
import { compareMethods } from "./methods.ts";
import { type Asked, numberTexts } from "./numbers.ts";
import { caveatsOf, few, headOf, severalIn, sidesOf, together } from "./text.ts";

export function compareMarkdown({ answer, blocks, left_out, level, cluster }: CompareReport): string {
  const made = blocks.flatMap(({ comparisons }) => comparisons.filter(({ comparable }) => comparable));
  const lines = [
    markdownText(answer),
    "",
    ...blocks.flatMap((block) => blockLines(block, { level, cluster })),
    ...left_out.map((text) => `- Left out: ${markdownText(text)}`),
    ...(left_out.length === 0 ? [] : [""]),
    ...[...compareMethods(made, severalIn(blocks)), memoryLegend].map((line) => `- ${markdownText(line)}`),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

function blockLines(block: Compared, asked: Omit<Asked, "comparisons">): string[] {
  const { comparisons, adjustment, cautions } = block;
  const made = comparisons.filter(({ comparable }) => comparable);
  const refused = comparisons
    .filter(({ comparable }) => !comparable)
    .flatMap(({ title, reasons }) => reasons.map(({ text }) => ({ title, text })));
  const caveats = made.flatMap(({ title, caveats: some }) =>
    caveatsOf(block, some).map(({ text }) => ({ title, text })),
  );
  const rows = made.map((one) => [
    marked(one.title, one.confidence),
    sidesOf(one),
    block.too_few ? "" : numberTexts(one, { ...asked, comparisons: 1 }).join("; "),
    one.p === null ? "" : pText(one.p),
    one.p_holm === null ? "" : pText(one.p_holm),
  ]);
  const columns = [
    { head: "" },
    { head: "pigs" },
    { head: "comparison" },
    { head: "p", right: true },
    { head: `after Holm (${adjustment.comparisons})`, right: true },
  ];
  return [
    `## ${markdownText(headOf(block))}`,
    "",
    ...(made.length === 0 ? [] : [...markdownTable(columns, rows), ""]),
    ...together(refused).map(
      ({ titles, text }) => `- Not compared: ${markdownText(`${few(titles)}: ${text}`)}`,
    ),
    ...together(caveats).map(
      ({ titles, text }) =>
        `- ${markdownText(titles.length === made.length ? text : `${few(titles)}: ${text}`)}`,
    ),
    ...cautions.map((caution) => `- ${markdownText(caution)}`),
    "",
  ];
}
