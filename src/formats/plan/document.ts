/** A plan for people, as text or as Markdown: the answer in sentences, the table, what to mind, who says so. */
import { sourceLine } from "../../knowledge/index.ts";
import type { Cell, Plan, PlanColumn } from "../../plan/index.ts";
import { levelPercent, percent } from "../../words/percent.ts";
import { type Block, type Form, gap, heading, list, table, text } from "../page/blocks.ts";
import { markdownOf } from "../page/markdown.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

export const planText = (plan: Plan, style: Style): string => textOf(planDocument(plan, "text"), style);
export const planMarkdown = (plan: Plan): string => markdownOf(planDocument(plan, "markdown"));

const planDocument = (plan: Plan, form: Form): Block[] => [
  heading(plan.title),
  ...plan.sentences.map((sentence) => text(sentence)),
  ...(plan.steps === undefined ? tableBlocks(plan) : stepBlocks(plan.steps)),
  ...list(form === "text" ? "Mind" : null, plan.cautions, { bullet: "- " }),
  ...list("Sources", plan.sources.map(sourceLine)),
];

const tableBlocks = ({ table: { title, columns, rows } }: Plan): Block[] => [
  heading(title, { level: 3 }),
  ...table(
    columns.map(({ head, as }) => ({ head, right: as !== "text" })),
    rows.map((row) => columns.map((column) => planCell(row[column.key], column))),
  ),
];

const stepBlocks = (steps: NonNullable<Plan["steps"]>): Block[] => [
  gap,
  {
    kind: "tasks",
    tasks: steps.map((step) => ({ task: step.do, notes: [step.why, `Source: ${sourceLine(step.source)}`] })),
  },
];

/** Counts as they are, shares in per cent, a dash for nothing. */
function planCell(value: Cell | undefined, { as, decimals }: PlanColumn): string {
  if (value === null || value === undefined) return "–";
  if (typeof value === "string") return value;
  if (as === "asked") return levelPercent(value);
  return as === "share" ? percent(value, decimals) : String(value);
}
