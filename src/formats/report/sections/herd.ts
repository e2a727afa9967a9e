/** How common it is, and what changed. */
import type { ReportResult, ReportWords } from "../../../report/index.ts";
import { list, table } from "../../page/blocks.ts";
import { drawn, type Part } from "../blocks.ts";
import * as pictures from "../pictures.ts";

export const herd: Part = (report, words) =>
  report.of === "case" ? [] : [...drawn(pictures.shares(report, words)), ...numbers(report, words)];

const numbers = ({ shares, visits }: ReportResult, words: ReportWords) =>
  table(
    (["question", "chosen_how", "pigs", "share", "interval"] as const).map((head) => ({
      head: words.say(head),
    })),
    shares.map(({ indicator, title, basis, visit, affected, examined, proportion, limits, from_memory }) => [
      `${words.name("indicators", indicator, title)}${from_memory ? "*" : ""}`,
      [...(visits.length > 1 && visit !== null ? [visit] : []), words.name("bases", basis ?? "")].join(", "),
      words.say("count_of", { affected, examined }),
      // A share of a handful that stands for nobody says less than its count.
      proportion === null || limits === null ? "" : words.percent(proportion),
      limits === null ? "" : `${words.percent(limits[0])} – ${words.percent(limits[1])}`,
    ]),
  );

export const compared: Part = (report, words, { audience }) => {
  if (report.compared === null) return [];
  const stands = (basis: string | null): boolean =>
    report.visits.some(({ chosen }) => chosen.some((one) => one.basis === basis && one.stands));
  // The sentences of the tests are English; in other languages the figures and the first screen tell.
  return [
    ...drawn(pictures.changes(report, words, stands)),
    ...(words.language === "en"
      ? list(null, audience === "farm" ? report.compared.slice(0, 1) : report.compared)
      : []),
  ];
};
