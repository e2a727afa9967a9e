/** Herd numbers for people, as text or as Markdown: a part a stratum, how common first, then how bad. */
import type { CombinedEstimate, HerdReport } from "../../herd/index.ts";
import { reachOf } from "../../herd/index.ts";
import type { SnoutReading } from "../../reading/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count } from "../../words/listing.ts";
import { type Block, type Form, gap, heading, list, remarks, text } from "../page/blocks.ts";
import { markdownOf } from "../page/markdown.ts";
import { memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { combinedTable, estimateTable, intervalRemarks, refusals } from "./prevalence.ts";
import { gradeRemarks, indexLines, nominalRemarks, scoreTable, shareRemarks } from "./scores.ts";
import { herdNotes, herdSources } from "./sources.ts";
import { byStratum, numbersTitle, type StratumNumbers, stratumTitle } from "./strata.ts";

/**
 * @param width characters a line
 * @param snouts the reading of the snouts, at the end
 */
export const herdText = (
  report: HerdReport,
  style: Style,
  width?: number,
  snouts: readonly SnoutReading[] = [],
): string => textOf(herdDocument(report, snouts, "text"), style, width);

/** @param snouts the reading of the snouts, at the end */
export const herdMarkdown = (report: HerdReport, snouts: readonly SnoutReading[]): string =>
  markdownOf(herdDocument(report, snouts, "markdown"));

const herdDocument = (report: HerdReport, snouts: readonly SnoutReading[], form: Form): Block[] => [
  ...combinedBlocks(report.combined ?? []),
  ...byStratum(report).flatMap(stratumBlocks),
  ...list("Notes", herdNotes(report)),
  ...seedBlocks(report),
  ...list("Sources", [...herdSources(report), memoryLegend]),
  ...snouts.flatMap((reading) => snoutBlocks(reading, form)),
];

function stratumBlocks(numbers: StratumNumbers): Block[] {
  const { estimates, scores, basis } = numbers;
  const reach = reachOf(basis);
  const warning = reach.prevalence || estimates.length === 0 ? [] : [`These numbers are ${reach.wording}.`];
  return [
    heading(numbersTitle(numbers)),
    ...estimateTable(estimates),
    ...remarks([...warning, ...intervalRemarks(estimates)]),
    ...(estimates.length > 0 && scores.length > 0 ? [gap] : []),
    ...scoreTable(scores),
    ...remarks(nominalRemarks(scores)),
    ...list("at or above each grade", gradeRemarks(scores), { indent: 2 }),
    ...remarks(shareRemarks(scores, estimates)),
    ...list("herd indices", indexLines(scores), { indent: 2 }),
  ];
}

/** Groups combined, a part for every visit, age class and basis. */
function combinedBlocks(combined: readonly CombinedEstimate[]): Block[] {
  const parts = grouped(combined, ({ stratum, basis }) => stratumTitle(stratum, basis));
  return [...parts].flatMap(([title, some]) => [
    heading(`${title} · groups combined by head count`),
    ...combinedTable(some),
    ...remarks(refusals(some)),
  ]);
}

/** The seed, so that somebody else can make the same numbers. */
function seedBlocks({ scores }: HerdReport): Block[] {
  const made = scores.find(({ bootstrap }) => bootstrap !== undefined)?.bootstrap;
  if (made === undefined) return [];
  return [gap, text(`Bootstrap: seed ${made.seed}, ${made.resamples} resamples.`, { indent: 0 })];
}

/** A sentence a line, each with who says so. */
const snoutBlocks = ({ visit, snouts, statements }: SnoutReading, form: Form): Block[] => [
  heading(`Snouts of visit ${visit} (${count(snouts, "snout")})`),
  ...list(
    null,
    statements.map(({ text: said, source }) => `${said} ${form === "text" ? `[${source}]` : `(${source})`}`),
    { bullet: "- " },
  ),
];
