/**
 * A comparison for people, as text or as Markdown: the answer, then the numbers, what was refused and why, what to mind,
 * who says so. A report has the numbers in a table, a terminal as lines below what they compare.
 */
import {
  allowedFor,
  type Compared,
  type CompareReport,
  type Comparison,
  ofExamined,
  plain,
  pText,
} from "../../compare/index.ts";
import { grouped } from "../../words/grouped.ts";
import { capital, listing } from "../../words/listing.ts";
import { levelPercent } from "../../words/percent.ts";
import { type Block, heading, list, right, table, text } from "../page/blocks.ts";
import { markdownOf } from "../page/markdown.ts";
import { marked, memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { compareMethods } from "./methods.ts";
import { type Asked, numberTexts } from "./numbers.ts";

/** @param quiet only the answers */
export function compareText(report: CompareReport, style: Style, quiet = false): string {
  const { answer, blocks, left_out } = report;
  const document = quiet
    ? blocks.map((block) => text(`${headOf(block)}: ${block.answer}`, { indent: 0 }))
    : [
        text(answer, { indent: 0 }),
        ...blocks.flatMap((block) => textBlocks(block, report)),
        ...list("Left out", left_out, { bullet: "- " }),
        ...list("Sources", sourceLines(report)),
      ];
  return textOf(document, style);
}

export function compareMarkdown({
  answer,
  blocks,
  between,
  left_out,
  level,
  cluster,
}: CompareReport): string {
  const made = blocks.flatMap(madeOf);
  return markdownOf([
    text(answer),
    ...blocks.flatMap((block) => reportBlocks(block, { between, level, cluster })),
    ...list(
      null,
      left_out.map((words) => `Left out: ${words}`),
    ),
    ...list(null, [...compareMethods(made, blocks), memoryLegend]),
  ]);
}

function textBlocks(block: Compared, { between, level, cluster, answer }: CompareReport): Block[] {
  const asked = { between, level, cluster, adjustment: block.adjustment };
  const made = madeOf(block);
  const part = (title: string, kind: Comparison["kind"]): Block[] => {
    const some = made.filter((one) => one.kind === kind);
    return some.length === 0
      ? []
      : [text(title, { quiet: true }), ...some.flatMap((one) => comparisonBlocks(one, block, asked))];
  };
  return [
    heading(headOf(block)),
    ...[...trialOf(block), ...agesOf(block)].map((words) => text(words, { quiet: true })),
    ...(block.answer === answer || !block.comparable ? [] : [text(block.answer)]),
    ...part("How common", "indicator"),
    ...part("How bad", "scale"),
    ...list("Not compared", refusedLines(block), { indent: 2, bullet: "- " }),
    ...list("Mind", mindLines(block).map(capital), { indent: 2, bullet: "- " }),
  ];
}

const comparisonBlocks = (one: Comparison, { too_few }: Compared, asked: Asked): Block[] => [
  text(`${marked(one.title, one.confidence)}: ${sidesOf(one)}`),
  ...(too_few ? [] : numberTexts(one, asked)).map((words) => text(words, { indent: 4 })),
];

/** @param asked without the adjustment, which has a column of its own */
function reportBlocks(block: Compared, asked: Asked): Block[] {
  const { too_few, adjustment } = block;
  return [
    heading(headOf(block)),
    ...table(
      [
        { head: "" },
        { head: "pigs" },
        { head: "comparison" },
        right("p"),
        right(`allowing for ${allowedFor(adjustment)}`),
      ],
      madeOf(block).map((one) => [
        marked(one.title, one.confidence),
        sidesOf(one),
        too_few ? "" : numberTexts(one, asked).join("; "),
        one.p === null ? "" : pText(one.p),
        one.p_adjusted === null ? "" : pText(one.p_adjusted),
      ]),
    ),
    ...list(null, [
      ...trialOf(block),
      ...agesOf(block),
      ...refusedLines(block).map((words) => `Not compared: ${words}`),
      ...mindLines(block),
    ]),
  ];
}

const madeOf = ({ comparisons }: Compared): Comparison[] =>
  comparisons.filter(({ comparable }) => comparable);

/** `alder-farm · pigs drawn at random (10 on 2026-03-14 and 10 on 2026-09-19)`. */
const headOf = ({ farm, visit, sides, pigs }: Compared): string =>
  [...(farm === null ? [] : [farm]), ...(visit == null ? [] : [visit]), `pigs ${pigs}`]
    .join(" · ")
    .concat(` (${listing(sides.map(({ title, pigs: number }) => `${number} ${title}`))})`);

/** `Treatment: vaccine at weaning; pens allocated by lot`. */
function trialOf({ trial }: Compared): string[] {
  if (trial === undefined) return [];
  const { treatment, allocated, unit, from } = trial;
  const how =
    from === "treatments"
      ? "read from the treatments of the visit"
      : `${unit === "pen or group" ? "pens and groups" : `${unit}s`} ${allocated === "by-lot" ? "allocated by lot" : "not said to be allocated by lot"}`;
  return [`Treatment: ${treatment ?? "not named"}; ${how}`];
}

/** `Median age: 58 d (55 to 61) on 2026-03-14, 60 d (57 to 64) on 2026-09-19`; nothing where no age is recorded. */
function agesOf({ sides }: Compared): string[] {
  if (sides.every(({ ages }) => ages === null)) return [];
  const said = sides.map(({ title, ages }) => {
    if (ages === null) return `not recorded ${title}`;
    const { median, least, greatest, not_recorded } = ages;
    const range = least === greatest ? "" : ` (${plain(least)} to ${plain(greatest)})`;
    return `${plain(median)} d${range} ${title}${not_recorded === 0 ? "" : `, ${not_recorded} not recorded`}`;
  });
  return [`Median age: ${said.join("; ")}`];
}

/** `7 of 10 on 2026-03-14, 2 of 10 on 2026-09-19`. */
const sidesOf = ({ sides }: Comparison): string =>
  sides
    .map((side) => {
      const left = side.not_examined === 0 ? "" : ` (${side.not_examined} not examined)`;
      const value =
        side.affected === undefined
          ? `median ${plain(side.median ?? 0)}, mean ${plain(side.mean ?? 0)}, n ${side.examined}`
          : ofExamined(side);
      return `${value} ${side.title}${left}`;
    })
    .join(sides[0]?.affected === undefined ? "; " : ", ");

/** Comparisons refused for the same reasons are named together. */
const refusedLines = ({ comparisons }: Compared): string[] =>
  together(
    comparisons
      .filter(({ comparable }) => !comparable)
      .flatMap(({ title, reasons }) => reasons.map((reason) => ({ title, text: reason.text }))),
  ).map(({ titles, text: words }) => `${few(titles)}: ${words}`);

/** Where the numbers only describe, what qualifies the tests is left out. */
function mindLines(block: Compared): string[] {
  const made = madeOf(block);
  const caveats = made.flatMap(({ title, caveats: some }) =>
    some
      .filter(({ although }) => !block.too_few || although !== undefined)
      .map((caveat) => ({ title, text: caveat.text })),
  );
  return [
    ...together(caveats).map(({ titles, text: words }) =>
      titles.length === made.length ? words : `${few(titles)}: ${words}`,
    ),
    ...block.cautions,
  ];
}

/** Three titles at most, and how many more. */
const few = (titles: readonly string[]): string =>
  titles.length > 4 ? listing([...titles.slice(0, 3), `${titles.length - 3} more`]) : listing(titles);

/** What is said of several titles is said once. */
function together(said: readonly { readonly title: string; readonly text: string }[]) {
  return [...grouped(said, ({ text: words }) => words)].map(([words, some]) => ({
    text: words,
    titles: some.map(({ title }) => title),
  }));
}

const hasInterval = ({ result }: Comparison): boolean =>
  result !== null && result.test !== "freeman-halton" && result.test !== "kruskal-wallis";

function sourceLines({ blocks, level }: CompareReport): string[] {
  const made = blocks.flatMap(madeOf);
  if (made.length === 0) return [];
  const cited = made.map(
    ({ title, confidence, source }) => `${marked(title, confidence)}: ${source ?? "no source named"}`,
  );
  return [
    ...new Set(cited),
    ...compareMethods(made, blocks),
    ...(made.some(hasInterval) ? [`Intervals: ${levelPercent(level)}, two-sided, each for itself.`] : []),
    memoryLegend,
  ];
}
