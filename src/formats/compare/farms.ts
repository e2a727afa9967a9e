/** Farms that were ranked, for people (text, Markdown) and as a table for scripts. */
import {
  ageWords,
  cautionsOf,
  type FarmsReport,
  type RankedFarm,
  type Ranking,
  type UnrankedFarm,
} from "../../compare/index.ts";
import { reachOf } from "../../herd/index.ts";
import { intervalMethods } from "../../knowledge/index.ts";
import { grouped } from "../../words/grouped.ts";
import { capital, listing } from "../../words/listing.ts";
import { levelPercent, percent, percentRange } from "../../words/percent.ts";
import { type Block, heading, list, right, table, text } from "../page/blocks.ts";
import { type CsvCell, csv } from "../page/csv.ts";
import { markdownOf } from "../page/markdown.ts";
import { marked, memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

/** @param quiet only the answers */
export function farmsText(report: FarmsReport, style: Style, quiet = false): string {
  const { answer, rankings, left_out } = report;
  return textOf(
    quiet
      ? rankings.map((one) => text(one.answer, { indent: 0 }))
      : [
          text(answer, { indent: 0 }),
          ...rankings.flatMap((one) => rankingBlocks(one, report)),
          ...list("Not ranked", unrankedLines(report), { bullet: "- " }),
          ...list("Left out", left_out, { bullet: "- " }),
          ...list("Sources", sourceLines(report)),
        ],
    style,
  );
}

export function farmsMarkdown(report: FarmsReport): string {
  return markdownOf([
    text(report.answer),
    ...report.rankings.flatMap((one) => rankingBlocks(one, report)),
    ...list("Not ranked", unrankedLines(report)),
    ...list("Left out", report.left_out),
    ...list("Sources", sourceLines(report)),
  ]);
}

/** Questions without a ranking, those of one reason together; of a single one the answer has said it. */
function unrankedLines({ rankings }: FarmsReport): string[] {
  const without = rankings.length < 2 ? [] : rankings.filter(({ reasons }) => reasons.length > 0);
  const why = ({ reasons, age_class }: Ranking): string =>
    `${ageWords(age_class)}: ${reasons.map(({ text: words }) => words.replace(/\.$/, "")).join("; ")}`;
  return [...grouped(without, why)].map(
    ([words, some]) => `${listing(some.map(({ title }) => title))}, ${words}`,
  );
}

function rankingBlocks(ranking: Ranking, { answer, level, rankings }: FarmsReport): Block[] {
  if (rankings.length > 1 && ranking.reasons.length > 0) return [];
  const { title, confidence, age_class, farms, others, answer: own } = ranking;
  return [
    heading(`${marked(title, confidence)} · ${ageWords(age_class)} · latest visit of each farm`),
    ...(answer.includes(own) ? [] : [text(own)]),
    ...table(
      [
        { head: "" },
        { head: "visit" },
        right("affected"),
        right("share"),
        right(`${levelPercent(level)} interval`),
        ...(hasLikely(farms) ? [right("likely"), { head: ["stands", "out"] }] : []),
      ],
      (ranking.reasons.length > 0 ? [] : farms).map((farm) => [
        farm.farm,
        farm.date ?? "",
        `${farm.affected} of ${farm.examined}`,
        percent(farm.share),
        intervalText(farm),
        ...(hasLikely(farms) ? [farm.likely === null ? "" : percent(farm.likely), markOf(farm)] : []),
      ]),
    ),
    ...list("Not ranked", others.map(otherText), { indent: 2, bullet: "- " }),
    ...list("Mind", (farms.length < 2 ? [] : cautionsOf(ranking)).map(capital), { indent: 2, bullet: "- " }),
  ];
}

/** In brackets where it differs from the others, but within their spread. */
const markOf = ({ stands_out, differs }: RankedFarm): string =>
  stands_out ?? (differs === null ? "" : `(${differs})`);

const hasLikely = (farms: readonly RankedFarm[]): boolean => farms.some(({ likely }) => likely !== null);

const intervalText = ({ lower, upper }: RankedFarm): string =>
  lower === null || upper === null ? "whole group" : percentRange(lower, upper);

/** `elm, 2026-01-05: 4 of 6, chosen for signs`. */
function otherText({ farm, date, affected, examined, not_examined, basis, why }: UnrankedFarm): string {
  const seen =
    examined === 0 ? `read in none of ${not_examined}` : `${affected} of ${examined} of these pigs`;
  return `${farm}${date === null ? "" : `, ${date}`}: ${seen}, ${why === null ? "" : "because "}${otherWhy({ basis, why })}`;
}

const otherWhy = ({ basis, why }: Pick<UnrankedFarm, "basis" | "why">): string => why ?? reachOf(basis).title;

function sourceLines({ rankings, adjustment }: FarmsReport): string[] {
  const ranked = rankings.filter(({ reasons }) => reasons.length === 0);
  if (ranked.length === 0) return [];
  const methods = new Set(ranked.flatMap(({ farms }) => farms.flatMap(({ method }) => method ?? [])));
  const cited = ranked.map(
    ({ title, confidence, source }) => `${marked(title, confidence)}: ${source ?? "no source named"}`,
  );
  return [
    ...new Set(cited),
    ...[...intervalMethods].flatMap(([id, { title, source }]) =>
      [...methods].some((method) => method === id)
        ? [`Interval, ${marked(title, source.confidence)}: ${source.cite}`]
        : [],
    ),
    ...(adjustment.tests === 0
      ? []
      : [
          "Stands out: both against all other farms together (Fisher 1935; by pens Rao & Scott 1992*) and outside the spread of the others (on the arcsine scale, Spiegelhalter 2005*; spread by DerSimonian & Laird 1986*; prediction by Higgins, Thompson & Spiegelhalter 2009*), the larger p, step-down for all farms by Holm 1979*.",
          ...(ranked.some(({ farms }) => farms.some((one) => markOf(one).startsWith("(")))
            ? ["In brackets: differs from all other farms together, but lies within their spread."]
            : []),
          "Likely: the share drawn towards the mean of the farms, the more the fewer its pigs: Efron & Morris 1975*.",
        ]),
    memoryLegend,
  ];
}

const head = [
  ..."age_class,question,farm,visit,date,basis,ranked,affected,examined,not_examined,share,lower,upper".split(
    ",",
  ),
  ..."level,method,counted_as,likely,p_together,p_spread,p,p_adjusted,tests,stands_out,differs,why".split(
    ",",
  ),
];

/** A line for each farm, the highest share first; farms that are not ranked have no share. Values are not rounded. */
export function farmsCsv({ rankings, level, adjustment: { tests } }: FarmsReport): string {
  return csv(
    head,
    rankings.flatMap(({ age_class, question, farms, others }) => [
      ...farms.map((one): CsvCell[] => [
        ...[age_class, question, one.farm, one.visit, one.date, one.basis, "yes"],
        ...[one.affected, one.examined, one.not_examined, one.share, one.lower, one.upper, level, one.method],
        ...[one.counted_as, one.likely, one.p_together, one.p_spread, one.p, one.p_adjusted, tests],
        ...[one.stands_out, one.differs, one.not_judged],
      ]),
      ...others.map((one): CsvCell[] => [
        ...[age_class, question, one.farm, one.visit, one.date, one.basis, "no"],
        ...[one.affected, one.examined, one.not_examined, ...Array<null>(head.length - 11).fill(null)],
        otherWhy(one),
      ]),
    ]),
  );
}
