/** Scores for people: one table a visit, a pig a line, then the scales and what is missing. */
import type { Archive } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import type { CaseScore, ScoredCase } from "../score/index.ts";
import { listing } from "../words/listing.ts";
import { visible } from "../words/visible.ts";
import { marked, memoryLegend } from "./memory-mark.ts";
import { number } from "./numbers.ts";
import { type ScoredRow, scoredVisits, usedScales } from "./score-visits.ts";
import type { Style } from "./style.ts";
import { table } from "./table.ts";

export function scoreText(scored: readonly ScoredCase[], archive: Archive, style: Style): string {
  const visits = scoredVisits(scored, archive);
  const used = usedScales(visits);
  const blocks = visits.flatMap(({ title, rows }) => [
    style.heading(visible(title)),
    ...visitTable(rows, used, style),
    "",
  ]);
  return [...blocks, ...missingLines(scored, style), ...legend(used, style)]
    .map((line) => `${line}\n`)
    .join("");
}

function visitTable(scored: readonly ScoredRow[], used: readonly Scale[], style: Style): string[] {
  const rows = scored.map(({ one, scores }) => [
    visible(one.id),
    visible(one.record.pig?.group ?? "–"),
    one.record.selection?.basis ?? "–",
    ...used.map((scale) => cell(scores.get(scale))),
  ]);
  const columns = [
    { head: "" },
    { head: "" },
    { head: "" },
    ...used.map((scale) => ({ head: visible(scale.short[0] ?? ""), right: true })),
  ];
  const second = ["case", "group", "basis", ...used.map((scale) => `${visible(scale.short[1] ?? "")} `)];
  const [first, ...rest] = table(columns, [second, ...rows]);
  return [first ?? "", ...rest].map((line, index) => `  ${index < 2 ? style.quiet(line) : line}`);
}

const cell = (score: CaseScore | undefined): string =>
  score === undefined || score.value === null ? "– " : marked(number(score.value, 1), score.confidence, true);

function missingLines(scored: readonly ScoredCase[], style: Style): string[] {
  const lines = scored.flatMap((one) =>
    grouped(one.scores.filter((score) => score.value === null)).map(
      ({ ids, why }) => `  ${visible(one.case)}  ${listing(ids)}: ${visible(why)}`,
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

function legend(used: readonly Scale[], style: Style): string[] {
  const rows = used.map((scale) => [
    visible(scale.short.join(" ")),
    scale.id,
    visible(`${marked(scale.title, scale.source.confidence)}. ${scale.source.cite}`),
  ]);
  const lines = table([{ head: "column" }, { head: "scale" }, { head: "" }], rows);
  const memory = used.some((scale) => scale.source.confidence === "from-memory") ? [`  ${memoryLegend}`] : [];
  return [style.heading("Scales"), ...lines.map((line) => `  ${line}`), ...memory];
}
