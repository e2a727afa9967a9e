/** The sections of a report in their order, by whom it is for: depth and words change with the reader, facts never. */
import { organById } from "../../knowledge/index.ts";
import type { Audience, ReportPig, ReportResult, ReportVisit, ReportWords } from "../../report/index.ts";
import { Html, html } from "../page/html.ts";
import * as pictures from "./pictures.ts";

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly body: readonly Html[];
}

type Part = (report: ReportResult, words: ReportWords) => readonly Html[];

/** What each reader gets, in order. */
const order: Readonly<Record<Audience, readonly (keyof typeof parts)[]>> = {
  farm: ["herd", "found", "scores", "compared", "next", "not_seen", "cautions"],
  colleague: [
    "history",
    "chosen",
    "found",
    "scores",
    "herd",
    "compared",
    "not_seen",
    "samples",
    "diagnoses",
    "next",
    "cautions",
    "method",
  ],
  laboratory: ["history", "chosen", "found", "samples", "diagnoses", "not_seen", "cautions", "method"],
};

export const sectionsOf = (report: ReportResult, audience: Audience, words: ReportWords): Section[] =>
  order[audience].flatMap((id) => {
    const body = parts[id](report, words);
    return body.length === 0 ? [] : [{ id, title: words.say(id), body }];
  });

const figureOf = ({ id, caption, svg }: pictures.Picture): Html =>
  html`<figure id="figure-${id}"><figcaption>${caption}</figcaption>${new Html(svg)}</figure>`;

type Cell = string | Html;
/** @param of whose table it is, where a page has several of a kind */
const tableOf = (heads: readonly string[], rows: readonly (readonly Cell[])[], of = ""): Html[] =>
  rows.length === 0
    ? []
    : [
        html`<div class="wide" tabindex="0" role="region" aria-label="${[of, ...heads].filter(Boolean).join(", ")}"><table><thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>${rows.map((cells) => html`<tr>${cells.map((cell, index) => (index === 0 ? html`<th scope="row">${cell}</th>` : html`<td>${cell}</td>`))}</tr>`)}</tbody></table></div>`,
      ];

const listOf = (items: readonly string[]): Html[] =>
  items.length === 0 ? [] : [html`<ul>${items.map((item) => html`<li>${item}</li>`)}</ul>`];

const number = (value: number | null): string => (value === null ? "" : String(value));

const parts = {
  history: (report, words) => [
    ...(report.of === "case" ? [] : pictures.days(report, words).map(figureOf)),
    ...report.visits.flatMap((visit) => historyOf(visit, report.visits.length > 1, words)),
  ],
  chosen: ({ visits }, words) =>
    visits.flatMap(({ chosen, chosen_note: note, date, id }) => [
      ...(visits.length > 1 ? [html`<h3>${date === null ? id : words.day(date)}</h3>`] : []),
      ...listOf(
        chosen.map(({ basis, pigs, stands }) =>
          words.say("chosen_row", {
            n: pigs,
            basis: words.name("bases", basis ?? ""),
            stands: stands ? "yes" : "no",
          }),
        ),
      ),
      ...(note === null ? [] : [html`<p>${note}</p>`]),
    ]),
  found: (whole, words) => {
    const report = latest(whole);
    const drawn = [
      ...pictures.body(report, words),
      ...(report.of === "case"
        ? report.pigs.flatMap((pig) => pictures.pigLungs(pig, words))
        : pictures.groupLungs(report, words)),
      ...pictures.snouts(report, words),
    ];
    const rows = findingRows(report.pigs, words);
    return [
      ...drawn.map(figureOf),
      ...(rows.length === 0
        ? [html`<p>${words.say("found_none")}</p>`]
        : tableOf([words.say("found"), words.say("pigs"), words.say("in_words")], rows)),
    ];
  },
  scores: (report, words) =>
    report.of === "case"
      ? [...scoreRows(report, words), ...pictures.times(report, words).map(figureOf)]
      : pictures.grades(report, words).map(figureOf),
  herd: (report, words) =>
    report.of === "case"
      ? []
      : [
          ...pictures.shares(report, words).map(figureOf),
          ...tableOf(
            [
              words.say("question"),
              words.say("chosen_how"),
              words.say("pigs"),
              words.say("share"),
              words.say("interval"),
            ],
            report.shares.map(
              ({ indicator, basis, visit, affected, examined, proportion, limits, from_memory }) => [
                `${words.name("indicators", indicator)}${from_memory ? "*" : ""}`,
                [
                  ...(report.visits.length > 1 && visit !== null ? [visit] : []),
                  words.name("bases", basis ?? ""),
                ].join(", "),
                words.say("count_of", { affected, examined }),
                proportion === null || (limits === null && examined < 5) ? "" : words.percent(proportion),
                limits === null ? "" : `${words.percent(limits[0])} – ${words.percent(limits[1])}`,
              ],
            ),
          ),
        ],
  compared: (report, words) =>
    report.compared === null
      ? []
      : [
          ...pictures
            .changes(report, words, (basis) =>
              report.visits.some(({ chosen }) => chosen.some((one) => one.basis === basis && one.stands)),
            )
            .map(figureOf),
          ...(words.language === "en" ? listOf(report.compared) : []),
        ],
  not_seen: (report, words) => [
    ...pictures.lookedAt(report, words).map(figureOf),
    ...listOf([
      ...new Set(
        report.pigs.flatMap(({ systems }) =>
          Object.entries(systems).flatMap(([id, { looked, reason }]) =>
            looked === "left" ? [`${words.name("systems", id)}: ${reason ?? words.say("no_reason")}`] : [],
          ),
        ),
      ),
    ]),
  ],
  samples: ({ pigs }, words) => {
    const rows = pigs.flatMap(({ id, samples }) =>
      samples.map((one) => [
        one.id,
        id,
        words.name("organs", one.from),
        one.into ?? "",
        one.tests.join(", "),
        one.at ?? "",
      ]),
    );
    return rows.length === 0
      ? [html`<p>${words.say("no_samples")}</p>`]
      : tableOf(
          [
            words.say("sample"),
            words.say("of_pig"),
            words.say("from"),
            words.say("into"),
            words.say("tests"),
            words.say("taken"),
          ],
          rows,
        );
  },
  diagnoses: ({ pigs }, words) =>
    (["morphologic", "aetiologic", "differentials"] as const).flatMap((kind) => {
      const told = new Map<string, string[]>();
      for (const { id, diagnosis } of pigs)
        for (const text of diagnosis[kind]) told.set(text, [...(told.get(text) ?? []), id]);
      return told.size === 0
        ? []
        : [
            html`<h3>${words.say(kind)}</h3>`,
            ...listOf([...told].map(([text, ids]) => (pigs.length > 1 ? `${text} (${ids.length})` : text))),
          ];
    }),
  next: ({ visits }, words) => {
    const all = visits.at(-1)?.recommendations ?? [];
    return all.length === 0
      ? [html`<p>${words.say("next_empty")}</p>`]
      : [html`<ol>${all.map((one) => html`<li>${one}</li>`)}</ol>`];
  },
  cautions: ({ scales, shares }, words) =>
    listOf([
      words.say("caution_small"),
      ...([...scales, ...shares].some((one) => one.from_memory) ? [words.say("caution_memory")] : []),
      words.say("caution_people"),
      words.say("caution_notifiable"),
    ]),
  method: ({ made_by: version, files, scales, shares }, words) => [
    html`<p>${words.say("made_with", { version, files: files.length })}</p>`,
    html`<h3>${words.say("sources")}</h3>`,
    ...listOf([
      ...new Set([
        ...scales.map(({ title, source, from_memory }) => `${title}: ${source}${from_memory ? "*" : ""}`),
        ...shares.flatMap(({ title, source }) => (source === null ? [] : [`${title}: ${source}`])),
      ]),
    ]),
    ...tableOf(
      [words.say("file"), words.say("digest")],
      files.map(({ file, sha256 }) => [file, html`<code>${sha256.slice(0, 16)}</code>`]),
    ),
  ],
} satisfies Record<string, Part>;

/** Of several visits the last: what was found before stands under what changed. */
function latest(report: ReportResult): ReportResult {
  const last = report.visits.at(-1);
  return last === undefined || report.visits.length < 2
    ? report
    : { ...report, visits: [last], pigs: report.pigs.filter(({ visit }) => visit === last.id) };
}

function historyOf(visit: ReportVisit, isOneOfSeveral: boolean, words: ReportWords): Html[] {
  const { complaint, question, id, date, groups, treatments, vaccinations } = visit;
  const named = date === null ? id : words.day(date);
  const under = (head: string, items: readonly string[]): Html[] =>
    items.length === 0 ? [] : [html`<p>${head}</p>`, ...listOf(items)];
  return [
    ...(isOneOfSeveral ? [html`<h3>${named}</h3>`] : []),
    ...(complaint === null ? [] : [html`<p>${words.say("complained", { complaint })}</p>`]),
    ...(question === null ? [] : [html`<p>${words.say("asked", { question })}</p>`]),
    ...tableOf(
      [words.say("group"), words.say("at_risk"), words.say("ill"), words.say("dead"), words.say("onset")],
      groups.map(({ name, at_risk, affected, dead, onset }) => [
        name,
        number(at_risk),
        number(affected),
        number(dead),
        onset ?? "",
      ]),
      isOneOfSeveral ? named : "",
    ),
    ...under(
      words.say("treatments"),
      treatments.map(({ words: told, from, to }) => [told, from, to].filter(Boolean).join(", ")),
    ),
    ...under(words.say("vaccinations"), vaccinations),
  ];
}

/** Findings by organ: in how many pigs, and in the words of the record. */
function findingRows(pigs: readonly ReportPig[], words: ReportWords): (string | Html)[][] {
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
      pigs.length > 1 ? words.say("found_row", { affected: some.size, examined: pigs.length }) : "",
      [...told].map(([text, times]) => (times > 1 ? `${text} (${times})` : text)).join("; "),
    ]);
}

const scoreRows = ({ pigs, scales }: ReportResult, words: ReportWords): Html[] =>
  listOf(
    pigs.flatMap(({ scores }) =>
      scores.map(({ scale, value, from_memory }) => {
        const most = scales.find((one) => one.scale === scale)?.most;
        return `${words.name("scales", scale)}: ${words.number(value)}${most === undefined ? "" : ` / ${words.number(most)}`}${from_memory ? "*" : ""}`;
      }),
    ),
  );
