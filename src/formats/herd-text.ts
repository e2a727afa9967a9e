/** Herd numbers for people: a block a stratum, how common first, then how bad. */
import type { CombinedEstimate, HerdReport } from "../herd/index.ts";
import { reachOf } from "../herd/index.ts";
import { visible } from "../words/visible.ts";
import { type Block, blocksOf, blockTitle, stratumTitle } from "./herd-blocks.ts";
import {
  type Cells,
  combinedCells,
  countedByPen,
  estimateCells,
  gradeRemarks,
  indexCells,
  intervalRemarks,
  refusals,
  scoreCells,
  scoresSingly,
} from "./herd-cells.ts";
import { herdNotes, herdSources } from "./herd-sources.ts";
import { memoryLegend } from "./memory-mark.ts";
import type { Style } from "./style.ts";
import { table } from "./table.ts";
import { wrapped } from "./wrap.ts";

const width = 100;

export function herdText(report: HerdReport, style: Style): string {
  const lines = [
    ...combinedLines(report, style),
    ...blocksOf(report).flatMap((block) => [
      style.heading(visible(blockTitle(block))),
      ...estimateLines(block, style),
      ...scoreLines(block, style),
      "",
    ]),
    ...noteLines(report, style),
    ...seedLines(report),
    style.heading("Sources"),
    ...herdSources(report).map((line) => `  ${visible(line)}`),
    `  ${memoryLegend}`,
  ];
  return lines.map((line) => `${line}\n`).join("");
}

function estimateLines({ estimates, basis }: Block, style: Style): string[] {
  if (estimates.length === 0) return [];
  const reach = reachOf(basis);
  return [
    ...tableLines(estimateCells(estimates), style),
    ...(reach.prevalence ? [] : [style.quiet(`  These numbers are ${reach.wording}.`)]),
    ...remarkLines(intervalRemarks(estimates), style),
    "",
  ];
}

function scoreLines({ scores, estimates }: Block, style: Style): string[] {
  return [
    ...tableLines(scoreCells(scores), style),
    ...remarkLines(countedByPen(estimates) && scores.length > 0 ? [scoresSingly] : [], style),
    ...listLines("at or above each grade", gradeRemarks(scores), style),
    ...listLines("herd indices", indexCells(scores), style),
  ];
}

/** Groups combined, a part for every visit, age class and basis. */
function combinedLines({ combined = [] }: HerdReport, style: Style): string[] {
  const parts = new Map<string, CombinedEstimate[]>();
  for (const one of combined) {
    const title = stratumTitle(one.stratum, one.basis);
    parts.set(title, [...(parts.get(title) ?? []), one]);
  }
  return [...parts].flatMap(([title, some]) => [
    style.heading(visible(`${title} · groups combined by head count`)),
    ...tableLines(combinedCells(some), style),
    ...remarkLines(refusals(some), style),
    "",
  ]);
}

function tableLines({ columns, rows }: Cells, style: Style): string[] {
  if (rows.length === 0) return [];
  const [header = "", ...body] = table(
    columns,
    rows.map((row) => row.map(visible)),
  );
  return [`  ${style.quiet(header)}`, ...body.map((line) => `  ${line}`)];
}

const remarkLines = (remarks: readonly string[], style: Style): string[] =>
  remarks.flatMap((remark) => wrapped(visible(remark), "  ", width).map((line) => style.quiet(line)));

function listLines(head: string, items: readonly string[], style: Style): string[] {
  if (items.length === 0) return [];
  return [`  ${style.quiet(head)}`, ...items.flatMap((item) => wrapped(visible(item), "    ", width))];
}

function noteLines(report: HerdReport, style: Style): string[] {
  const notes = herdNotes(report);
  return notes.length === 0 ? [] : [style.heading("Notes"), ...notes.map((note) => `  ${visible(note)}`), ""];
}

/** The seed, so that somebody else can make the same numbers. */
export function seedLines({ scores }: HerdReport): string[] {
  const made = scores.find(({ bootstrap }) => bootstrap !== undefined)?.bootstrap;
  if (made === undefined) return [];
  return [`Bootstrap: seed ${made.seed}, ${made.resamples} resamples.`, ""];
}
