/** Scores for people: one table a visit, a pig a line, then the scales and what is missing. */
import type { Archive } from "../../cases/index.ts";
import type { Scale } from "../../knowledge/index.ts";
import type { CaseScore, ScoredCase } from "../../score/index.ts";
import { listing } from "../../words/listing.ts";
import { visible } from "../../words/visible.ts";
import { marked, memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { wrapped } from "../page/wrap.ts";
import { scoreTable } from "./table.ts";
import { type ScoredVisit, scoredVisits, usedScales } from "./visits.ts";

/** @param width characters a line, 60 or more */
export function scoreText(scored: readonly ScoredCase[], archive: Archive, style: Style, width = 80): string {
  const visits = scoredVisits(scored, archive);
  const used = usedScales(visits);
  const blocks = visits.flatMap(({ title, rows }) => [
    style.heading(visible(title)),
    ...scoreTable(rows, used, style, width),
    "",
  ]);
  return [...blocks, ...missingLines(scored, style, width), ...legend(used, visits, style, width)]
    .map((line) => `${line}\n`)
    .join("");
}

function missingLines(scored: readonly ScoredCase[], style: Style, width: number): string[] {
  const lines = scored.flatMap((one) =>
    grouped(one.scores.filter((score) => score.value === null)).flatMap(({ ids, why }) =>
      wrapped(`${visible(one.case)}  ${listing(ids)}: ${visible(why)}`, "  ", width, "      "),
    ),
  );
  return lines.length === 0 ? [] : [style.heading("No score, and why"), ...lines, ""];
}

/** Scales of one pig that miss the same thing share a line. */
function grouped(scores: readonly CaseScore[]): { ids: string[]; why: string }[] {
  const groups = new Map<string, string[]>();
  for (const score of scores) {
    const missing = score.missing.length === 0 ? "" : `missing ${listing(score.missing)}`;
    const why = [missing, score.reason ?? ""].filter((part) => part !== "").join("; ");
    groups.set(why, [...(groups.get(why) ?? []), score.scale]);
  }
  return [...groups].map(([why, ids]) => ({ ids, why }));
}

/** The scales by the heads of their columns, each with its id, title and source. */
function legend(
  used: readonly Scale[],
  visits: readonly ScoredVisit[],
  style: Style,
  width: number,
): string[] {
  const lines = used.flatMap((scale) => {
    const { confidence, cite } = shownSource(scale, visits);
    const said = visible(`${marked(scale.title, confidence)}. ${cite}`);
    return wrapped(`${visible(scale.short.join(" "))}: ${scale.id}. ${said}`, "  ", width, "    ");
  });
  const memory = used.some((scale) => shownSource(scale, visits).confidence === "from-memory");
  return [style.heading("Scales"), ...lines, ...(memory ? wrapped(memoryLegend, "  ", width, "    ") : [])];
}

/** Who says so of the values that are shown: of the grade alone where all of them were written down as grades. */
function shownSource(scale: Scale, visits: readonly ScoredVisit[]): Scale["source"] {
  const shown = visits
    .flatMap(({ rows }) => rows.flatMap(({ scores }) => scores.get(scale) ?? []))
    .filter(({ value }) => value !== null);
  const graded = shown.length > 0 && shown.every((score) => score.from_grade);
  return (graded && scale.grade_source) || scale.source;
}
