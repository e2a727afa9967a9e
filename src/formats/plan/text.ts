/** A plan for people: the answer in sentences, the table, what to mind, who says so. */
import { sourceLine } from "../../knowledge/index.ts";
import type { Plan } from "../../plan/index.ts";
import { visible } from "../../words/visible.ts";
import type { Style } from "../page/style.ts";
import { table } from "../page/table.ts";
import { wrapped } from "../page/wrap.ts";
import { planCell } from "./cells.ts";

export function planText(plan: Plan, style: Style): string {
  const lines = [
    style.heading(visible(plan.title)),
    ...plan.sentences.flatMap((sentence) => wrapped(visible(sentence), "  ")),
    "",
    ...(plan.steps === undefined ? tableLines(plan, style) : stepLines(plan.steps)),
    "",
    style.heading("Mind"),
    ...plan.cautions.flatMap((caution) => wrapped(caution, "  - ")),
    ...(plan.sources.length === 0 ? [] : ["", style.heading("Sources")]),
    ...plan.sources.flatMap((source) => wrapped(sourceLine(source), "  ")),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

function tableLines({ table: { title, columns, rows } }: Plan, style: Style): string[] {
  const [head, ...body] = table(
    columns.map(({ head: name, as }) => ({ head: name, right: as !== "text" })),
    rows.map((row) => columns.map((column) => planCell(row[column.key], column))),
  );
  return [style.heading(title), `  ${style.quiet(head ?? "")}`, ...body.map((line) => `  ${line}`)];
}

function stepLines(steps: NonNullable<Plan["steps"]>): string[] {
  return steps.flatMap((step, index) => [
    ...(index === 0 ? [] : [""]),
    ...wrapped(step.do, "  [ ] "),
    ...wrapped(step.why, "      "),
    ...wrapped(`Source: ${sourceLine(step.source)}`, "      "),
  ]);
}
