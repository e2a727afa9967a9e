/** How the problem came about, and which pigs were taken of it. */
import type { ReportVisit, ReportWords } from "../../../report/index.ts";
import { type Block, heading, list, table, text } from "../../page/blocks.ts";
import { drawn, type Part } from "../blocks.ts";
import * as pictures from "../pictures.ts";

export const history: Part = (report, words) => [
  ...(report.of === "case" ? [] : drawn(pictures.days(report, words))),
  ...report.visits.flatMap((visit) => [
    ...named(visit, report.visits.length > 1, words),
    ...ofVisit(visit, words),
  ]),
];

/** Its day, where there are several. */
const named = ({ id, date }: ReportVisit, isOneOfSeveral: boolean, words: ReportWords): Block[] =>
  isOneOfSeveral ? [heading(date === null ? id : words.day(date), { level: 3 })] : [];

/** A day as the reader writes it; other words as they stand. */
const dayOr = (told: string | null, words: ReportWords): string =>
  told !== null && /^\d{4}-\d{2}-\d{2}$/.test(told) ? words.day(told) : (told ?? "");

function ofVisit(
  { complaint, question, groups, treatments, vaccinations }: ReportVisit,
  words: ReportWords,
): Block[] {
  const { say } = words;
  const number = (value: number | null): string => (value === null ? "" : words.number(value));
  return [
    ...(complaint === null ? [] : [text(say("complained", { complaint }))]),
    ...(question === null ? [] : [text(say("asked", { question }))]),
    ...table(
      [say("group"), say("at_risk"), say("ill"), say("dead"), say("onset")].map((head) => ({ head })),
      groups.map(({ name, at_risk, affected, dead, onset }) => [
        name,
        number(at_risk),
        number(affected),
        number(dead),
        dayOr(onset, words),
      ]),
    ),
    ...list(
      say("treatments"),
      treatments.map(({ words: told, from, to }) =>
        [told, dayOr(from, words), dayOr(to, words)].filter(Boolean).join(", "),
      ),
    ),
    ...list(say("vaccinations"), vaccinations),
  ];
}

export const chosen: Part = ({ visits }, words) =>
  visits.flatMap((visit) => [
    ...named(visit, visits.length > 1, words),
    ...list(
      null,
      visit.chosen.map(({ basis, pigs, stands }) =>
        words.say("chosen_row", {
          n: pigs,
          basis: words.name("bases", basis ?? ""),
          stands: stands ? "yes" : "no",
        }),
      ),
    ),
    ...(visit.chosen_note === null ? [] : [text(visit.chosen_note)]),
  ]);
