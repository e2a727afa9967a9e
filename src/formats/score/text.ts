/** Scores for people: a sentence a visit and scale, one table a visit, a pig a line, then what is missing. */
import { type Archive, questionOf } from "../../cases/index.ts";
import type { Scale } from "../../knowledge/index.ts";
import {
  type CaseScore,
  preferredScales,
  printedBounds,
  printedScore,
  type ScoredCase,
} from "../../score/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count, listing } from "../../words/listing.ts";
import { type Block, gap, heading, list, table, text } from "../page/blocks.ts";
import { marked, memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { missingLines, scaleSentence, wasLookedAt } from "./answers.ts";
import { type ScoredRow, type ScoredVisit, scoredVisits, usedScales } from "./visits.ts";

export interface ScoreLook {
  /** Characters a line, 60 or more. */
  readonly width?: number;
  /** All scales of each organ, as those that were asked for by name are. */
  readonly all?: boolean;
  /** Nothing but the sentences. */
  readonly quiet?: boolean;
}

export function scoreText(
  scored: readonly ScoredCase[],
  archive: Archive,
  style: Style,
  { width = 80, all = false, quiet = false }: ScoreLook = {},
): string {
  const visits = scoredVisits(scored, archive);
  const used = usedScales(visits);
  const { shown, told } = all ? { shown: used, told: used } : preferred(used, visits, archive);
  const graded = shown.filter((scale) => valuesOf(scale, visits) > 0);
  return textOf(
    [
      ...visits.flatMap(({ title, rows }) => [
        heading(`${title} (${count(rows.length, "pig")})`),
        ...graded
          .filter((scale) => rows.some(({ scores }) => (scores.get(scale)?.value ?? null) !== null))
          .map((scale) => text(scaleSentence(scale, rows), { hang: 2 })),
        ...(quiet ? [] : scoreTable(rows, all ? shown : graded)),
      ]),
      ...(quiet
        ? []
        : [
            ...list("No exact score, and why", missingLines(visits, told)),
            ...(all ? list("Scales", legend(shown, visits)) : moreWithAll(used, shown, visits)),
          ]),
    ],
    style,
    width,
  );
}

const valuesOf = (scale: Scale, visits: readonly ScoredVisit[]): number =>
  visits.flatMap(({ rows }) => rows).filter(({ scores }) => (scores.get(scale)?.value ?? null) !== null)
    .length;

/** One scale an organ; of an organ that was looked at and has no score, the first, to say why. */
function preferred(used: readonly Scale[], visits: readonly ScoredVisit[], { cases }: Archive) {
  const asked = visits.flatMap(({ rows }) => questionOf(rows[0]?.one.visit)?.indicator ?? []);
  const counted = used.map((scale) => ({ scale, pigs: valuesOf(scale, visits) }));
  const shown = preferredScales(cases, counted, asked);
  const unscored = [...grouped(used, ({ organ }) => organ).values()].flatMap((some) =>
    some.some((scale) => shown.includes(scale))
      ? []
      : some.filter((scale) => wasLookedAt(scale, visits)).slice(0, 1),
  );
  return { shown, told: used.filter((scale) => shown.includes(scale) || unscored.includes(scale)) };
}

/** The scales by their names, which say who and when; the rest comes with --all. */
function moreWithAll(
  used: readonly Scale[],
  shown: readonly Scale[],
  visits: readonly ScoredVisit[],
): Block[] {
  const others = used.filter((scale) => !shown.includes(scale));
  const blank = others.filter((scale) => valuesOf(scale, visits) === 0).length;
  const more = [
    ...(others.length > blank ? [`${count(others.length - blank, "more scale")} of the same organs`] : []),
    ...(blank > 0 ? [`${count(blank, "scale")} on which no pig has a score`] : []),
    "sources",
  ];
  const named = shown.map(({ short, id }) => `${short.join(" ")} ${id}`);
  const memory = visits.some(({ rows }) =>
    rows.some(({ scores }) =>
      shown.some((scale) => {
        const score = scores.get(scale);
        return score !== undefined && score.value !== null && score.confidence === "from-memory";
      }),
    ),
  );
  return [
    gap,
    ...(named.length === 0
      ? [text("No pig has a score.", { indent: 0 })]
      : [text(`Scales: ${listing(named)}.`, { indent: 0 })]),
    text(`More with --all: ${listing(more)}.`, { indent: 0 }),
    ...(memory ? [text(memoryLegend, { indent: 0 })] : []),
  ];
}

/** A pig a line, a scale a column. */
const scoreTable = (rows: readonly ScoredRow[], used: readonly Scale[]): Block[] =>
  used.length === 0
    ? []
    : table(
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
