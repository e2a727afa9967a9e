/** A plan as Markdown, to go into a protocol or an e-mail. */
import { sourceLine } from "../../knowledge/index.ts";
import type { Plan } from "../../plan/index.ts";
import { markdownTable, markdownText } from "../page/markdown.ts";
import { planCell } from "./cells.ts";

export function planMarkdown(plan: Plan): string {
  const { title, columns, rows } = plan.table;
  const body =
    plan.steps === undefined
      ? [
          `### ${markdownText(title)}`,
          "",
          ...markdownTable(
            columns.map(({ head, as }) => ({ head, right: as !== "text" })),
            rows.map((row) => columns.map((column) => planCell(row[column.key], column))),
          ),
        ]
      : plan.steps.map(
          (step) =>
            `- [ ] ${markdownText(step.do)}\n  ${markdownText(step.why)}\n  Source: ${markdownText(sourceLine(step.source))}`,
        );
  const lines = [
    `## ${markdownText(plan.title)}`,
    "",
    ...plan.sentences.flatMap((sentence) => [markdownText(sentence), ""]),
    ...body,
    "",
    ...plan.cautions.map((caution) => `- ${markdownText(caution)}`),
    ...(plan.sources.length === 0 ? [] : ["", "Sources:", ""]),
    ...plan.sources.map((source) => `- ${markdownText(sourceLine(source))}`),
  ];
  return lines.map((line) => `${line}\n`).join("");
}
