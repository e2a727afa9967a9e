/** What was found, how bad it is, and what nobody looked at. */
import { organById } from "../../../knowledge/index.ts";
import type { ReportPig, ReportResult, ReportWords } from "../../../report/index.ts";
import { list, table, text } from "../../page/blocks.ts";
import { drawn, type Part } from "../blocks.ts";
import * as pictures from "../pictures.ts";

export const found: Part = (whole, words) => {
  const report = latest(whole);
  const rows = findingRows(report.pigs, words);
  return [
    ...drawn(pictures.body(report, words)),
    ...drawn(
      report.of === "case"
        ? report.pigs.flatMap((pig) => pictures.pigLungs(pig, words))
        : pictures.groupLungs(report, words),
    ),
    ...drawn(pictures.snouts(report, words)),
    ...(rows.length === 0
      ? [text(words.say("found_none"))]
      : table(
          [{ head: words.say("organ") }, { head: words.say("pigs") }, { head: words.say("in_words") }],
          rows,
        )),
  ];
};

/** Of several visits the last: what was found before stands under what changed. */
export function latest(report: ReportResult): ReportResult {
  const last = report.visits.at(-1);
  return last === undefined || report.visits.length < 2
    ? report
    : { ...report, visits: [last], pigs: report.pigs.filter(({ visit }) => visit === last.id) };
}

/** An organ a row: in how many pigs, and in the words of the record. */
function findingRows(pigs: readonly ReportPig[], words: ReportWords): string[][] {
  const byOrgan = new Map<string, { pigs: Set<string>; told: Map<string, number> }>();
  for (const { id, findings } of pigs)
    for (const { organ, words: told } of findings) {
      const row = byOrgan.get(organ) ?? { pigs: new Set(), told: new Map() };
      row.pigs.add(id);
      row.told.set(told, (row.told.get(told) ?? 0) + 1);
      byOrgan.set(organ, row);
    }
  return [...byOrgan]
    .toSorted(([a], [b]) => (organById(a)?.index ?? 0) - (organById(b)?.index ?? 0))
    .map(([organ, { pigs: some, told }]) => [
      words.name("organs", organ),
      pigs.length > 1 ? words.say("count_of", { affected: some.size, examined: pigs.length }) : "",
      [...told].map(([text, times]) => (times > 1 ? `${text} (${times})` : text)).join("; "),
    ]);
}

export const scores: Part = (report, words) =>
  report.of === "case"
    ? [...list(null, scoreLines(report, words)), ...drawn(pictures.times(report, words))]
    : drawn(pictures.grades(report, words));

const scoreLines = ({ pigs, scales }: ReportResult, words: ReportWords): string[] =>
  pigs.flatMap(({ scores: all }) =>
    all.map(({ scale, value, from_memory }) => {
      const told = scales.find((one) => one.scale === scale);
      const of = told === undefined ? "" : ` / ${words.number(told.most)}`;
      return `${words.name("scales", scale, told?.title)}: ${words.number(value)}${of}${from_memory ? "*" : ""}`;
    }),
  );

export const notSeen: Part = (report, words) => {
  const left = report.pigs.flatMap(({ systems }) =>
    Object.entries(systems).flatMap(([id, { looked, reason }]) =>
      looked === "left" ? [`${words.name("systems", id)}: ${reason ?? words.say("no_reason")}`] : [],
    ),
  );
  return [...drawn(pictures.lookedAt(report, words)), ...list(null, [...new Set(left)])];
};
