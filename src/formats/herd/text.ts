/** Herd numbers for people: a block a stratum, how common first, then how bad. */
import type { CombinedEstimate, HerdReport } from "../../herd/index.ts";
import { reachOf } from "../../herd/index.ts";
import { visible } from "../../words/visible.ts";
import { memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { table } from "../page/table.ts";
import { wrapped } from "../page/wrap.ts";
import { type Block, blocksOf, blockTitle, stratumTitle } from "./blocks.ts";
import { type Cells, combinedCells, estimateCells, intervalRemarks, refusals } from "./cells.ts";
import { gradeRemarks, indexCells, nominalRemarks, scoreCells, shareRemarks } from "./score-cells.ts";
import { herdNotes, herdSources } from "./sources.ts";

interface Page {
  readonly style: Style;
  readonly width: number;
}

/** @param width characters a line of running text */
export function herdText(report: HerdReport, style: Style, width = 100): string {
  const page: Page = { style, width };
  const lines = [
    ...combinedLines(report, page),
    ...blocksOf(report).flatMap((block) => [
      style.heading(visible(blockTitle(block))),
      ...estimateLines(block, page),
      ...scoreLines(block, page),
      "",
    ]),
    ...noteLines(report, page),
    ...seedLines(report),
    style.heading("Sources"),
    ...herdSources(report).flatMap((line) => wrapped(visible(line), "  ", width, "    ")),
    ...wrapped(memoryLegend, "  ", width, "    "),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

function estimateLines({ estimates, basis }: Block, page: Page): string[] {
  if (estimates.length === 0) return [];
  const reach = reachOf(basis);
  return [
    ...tableLines(estimateCells(estimates), page),
    ...(reach.prevalence ? [] : remarkLines([`These numbers are ${reach.wording}.`], page)),
    ...remarkLines(intervalRemarks(estimates), page),
    "",
  ];
}

function scoreLines({ scores, estimates }: Block, page: Page): string[] {
  return [
    ...tableLines(scoreCells(scores), page),
    ...remarkLines(nominalRemarks(scores), page),
    ...listLines("at or above each grade", gradeRemarks(scores), page),
    ...remarkLines(shareRemarks(scores, estimates), page),
    ...listLines("herd indices", indexCells(scores), page),
  ];
}

/** Groups combined, a part for every visit, age class and basis. */
function combinedLines({ combined = [] }: HerdReport, page: Page): string[] {
  const parts = new Map<string, CombinedEstimate[]>();
  for (const one of combined) {
    const title = stratumTitle(one.stratum, one.basis);
    parts.set(title, [...(parts.get(title) ?? []), one]);
  }
  return [...parts].flatMap(([title, some]) => [
    page.style.heading(visible(`${title} · groups combined by head count`)),
    ...tableLines(combinedCells(some), page),
    ...remarkLines(refusals(some), page),
    "",
  ]);
}

function tableLines({ columns, rows }: Cells, { style }: Page): string[] {
  if (rows.length === 0) return [];
  const [header = "", ...body] = table(
    columns,
    rows.map((row) => row.map(visible)),
  );
  return [`  ${style.quiet(header)}`, ...body.map((line) => `  ${line}`)];
}

const remarkLines = (remarks: readonly string[], { style, width }: Page): string[] =>
  remarks.flatMap((remark) => wrapped(visible(remark), "  ", width).map((line) => style.quiet(line)));

function listLines(head: string, items: readonly string[], { style, width }: Page): string[] {
  if (items.length === 0) return [];
  return [`  ${style.quiet(head)}`, ...items.flatMap((item) => wrapped(visible(item), "    ", width))];
}

function noteLines(report: HerdReport, page: Page): string[] {
  const notes = herdNotes(report);
  if (notes.length === 0) return [];
  const lines = notes.flatMap((note) => wrapped(visible(note), "  ", page.width, "    "));
  return [page.style.heading("Notes"), ...lines, ""];
}

/** The seed, so that somebody else can make the same numbers. */
export function seedLines({ scores }: HerdReport): string[] {
  const made = scores.find(({ bootstrap }) => bootstrap !== undefined)?.bootstrap;
  if (made === undefined) return [];
  return [`Bootstrap: seed ${made.seed}, ${made.resamples} resamples.`, ""];
}
