/** Scores for people: one table a visit, a pig a line, then the scales and what is missing. */
import type { Archive } from "../../cases/index.ts";
import type { Scale } from "../../knowledge/index.ts";
import { type CaseScore, printedBounds, printedScore, type ScoredCase } from "../../score/index.ts";
import { grouped } from "../../words/grouped.ts";
import { listing } from "../../words/listing.ts";
import { type Block, heading, list, table } from "../page/blocks.ts";
import { marked, memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { type ScoredRow, type ScoredVisit, scoredVisits, usedScales } from "./visits.ts";

/** @param width characters a line, 60 or more */
export function scoreText(scored: readonly ScoredCase[], archive: Archive, style: Style, width = 80): string {
  const visits = scoredVisits(scored, archive);
  const used = usedScales(visits);
  return textOf(
    [
      ...visits.flatMap(({ title, rows }) => [heading(title), ...scoreTable(rows, used)]),
      ...list("No exact score, and why", scored.flatMap(missingLines)),
      ...list("Scales", legend(used, visits)),
    ],
    style,
    width,
  );
}

/** A pig a line, a scale a column. */
const scoreTable = (rows: readonly ScoredRow[], used: readonly Scale[]): Block[] =>
  table(
    [
      { head: "case" },
      { head: "group" },
      { head: "basis" },
      // Under each number and each head there is room for the mark of memory.
      ...used.map(({ short }) => ({ head: [short[0] ?? "", `${short[1] ?? ""} `], right: true })),
    ],
    rows.map(({ one, scores }) => [
      one.id,
      one.record.pig?.group ?? "–",
      one.record.selection?.basis ?? "–",
      ...used.map((scale) => cell(scale, scores.get(scale))),
    ]),
    { parts: true },
  );

function cell(scale: Scale, score: CaseScore | undefined): string {
  if (score?.bounds !== undefined)
    return marked(printedBounds(scale, score.bounds, true), score.confidence, true);
  return score === undefined || score.value === null
    ? "– "
    : marked(printedScore(scale, score.value), score.confidence, true);
}

/** Scales of one pig that miss the same thing share a line. */
const missingLines = (one: ScoredCase): string[] =>
  [
    ...grouped(
      one.scores.filter(({ value }) => value === null),
      whyNone,
    ),
  ].map(([why, scores]) => `${one.case} ${listing(scores.map(({ scale }) => scale))}: ${why}`);

function whyNone({ missing, reason }: CaseScore): string {
  const lacks = missing.length === 0 ? "" : `missing ${listing(missing)}`;
  return [lacks, reason ?? ""].filter((part) => part !== "").join("; ");
}

/** The scales by the heads of their columns, each with its id, title and source. */
function legend(used: readonly Scale[], visits: readonly ScoredVisit[]): string[] {
  const sources = used.map((scale) => shownSource(scale, visits));
  const lines = used.map(({ short, id, title }, at) => {
    const { confidence = null, cite = "" } = sources[at] ?? {};
    return `${short.join(" ")}: ${id}. ${marked(title, confidence)}. ${cite}`;
  });
  const memory = sources.some(({ confidence }) => confidence === "from-memory");
  return [...lines, ...(memory ? [memoryLegend] : [])];
}

/** Who says so of the values that are shown: of the grade alone where all of them were written down as grades. */
function shownSource(scale: Scale, visits: readonly ScoredVisit[]): Scale["source"] {
  const shown = visits
    .flatMap(({ rows }) => rows.flatMap(({ scores }) => scores.get(scale) ?? []))
    .filter(({ value }) => value !== null);
  const graded = shown.length > 0 && shown.every((score) => score.from_grade);
  return (graded && scale.grade_source) || scale.source;
}
