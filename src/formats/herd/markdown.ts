/** Herd numbers as Markdown, to go into a report. */
import type { CombinedEstimate, HerdReport } from "../../herd/index.ts";
import { reachOf } from "../../herd/index.ts";
import type { SnoutReading } from "../../reading/index.ts";
import { count } from "../../words/listing.ts";
import { markdownTable, markdownText } from "../page/markdown.ts";
import { memoryLegend } from "../page/memory-mark.ts";
import { type Block, blocksOf, blockTitle, stratumTitle } from "./blocks.ts";
import { type Cells, combinedCells, estimateCells, intervalRemarks, refusals } from "./cells.ts";
import { gradeRemarks, indexCells, nominalRemarks, scoreCells, shareRemarks } from "./score-cells.ts";
import { herdNotes, herdSources } from "./sources.ts";
import { seedLines } from "./text.ts";

/** @param snouts the reading of the snouts, a list at the end */
export function herdMarkdown(report: HerdReport, snouts: readonly SnoutReading[]): string {
  const lines = [
    ...combinedLines(report.combined ?? []),
    ...blocksOf(report).flatMap(blockLines),
    ...list("Notes:", herdNotes(report)),
    ...paragraphs(seedLines(report).filter((line) => line !== "")),
    ...list("Sources:", [...herdSources(report), memoryLegend]),
    ...snouts.flatMap(({ visit, snouts: seen, statements }) => [
      `## ${markdownText(`Snouts of visit ${visit} (${count(seen, "snout")})`)}`,
      "",
      ...statements.map(({ text, source }) => `- ${markdownText(`${text} (${source})`)}`),
      "",
    ]),
  ];
  return lines
    .slice(0, lines.at(-1) === "" ? -1 : undefined)
    .map((line) => `${line}\n`)
    .join("");
}

function blockLines(block: Block): string[] {
  const { estimates, scores, basis } = block;
  const reach = reachOf(basis);
  const warning = reach.prevalence || estimates.length === 0 ? [] : [`These numbers are ${reach.wording}.`];
  return [
    `## ${markdownText(blockTitle(block))}`,
    "",
    ...tableLines(estimateCells(estimates)),
    ...paragraphs([...warning, ...intervalRemarks(estimates)]),
    ...tableLines(scoreCells(scores)),
    ...paragraphs(nominalRemarks(scores)),
    ...list("At or above each grade:", gradeRemarks(scores)),
    ...paragraphs(shareRemarks(scores, estimates)),
    ...list("Herd indices:", indexCells(scores)),
  ];
}

function combinedLines(combined: readonly CombinedEstimate[]): string[] {
  const parts = new Map<string, CombinedEstimate[]>();
  for (const one of combined) {
    const title = stratumTitle(one.stratum, one.basis);
    parts.set(title, [...(parts.get(title) ?? []), one]);
  }
  return [...parts].flatMap(([title, some]) => [
    `## ${markdownText(`${title} · groups combined by head count`)}`,
    "",
    ...tableLines(combinedCells(some)),
    ...paragraphs(refusals(some)),
  ]);
}

const tableLines = ({ columns, rows }: Cells): string[] =>
  rows.length === 0 ? [] : [...markdownTable(columns, rows), ""];

const paragraphs = (texts: readonly string[]): string[] => texts.flatMap((text) => [markdownText(text), ""]);

const list = (head: string, items: readonly string[]): string[] =>
  items.length === 0 ? [] : [head, "", ...items.map((item) => `- ${markdownText(item)}`), ""];
