/** A comparison for people: the answer, then the numbers, what was refused and why, what to mind, who says so. */
import {
  type Compared,
  type CompareReport,
  type Comparison,
  ofExamined,
  plain,
} from "../../compare/index.ts";
import { listing } from "../../words/listing.ts";
import { levelPercent } from "../../words/percent.ts";
import { visible } from "../../words/visible.ts";
import { marked, memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { wrapped } from "../page/wrap.ts";
import { compareMethods } from "./methods.ts";
import { type Asked, numberTexts } from "./numbers.ts";

/** @param quiet only the answers */
export function compareText(report: CompareReport, style: Style, quiet = false): string {
  const { answer, blocks, left_out } = report;
  const lines = quiet
    ? blocks.flatMap((block) => wrapped(visible(`${headOf(block)}: ${block.answer}`)))
    : [
        ...wrapped(visible(answer)),
        "",
        ...blocks.flatMap((block) => [...blockLines(block, report, style), ""]),
        ...leftOutLines(left_out, style),
        ...sourceLines(report, style),
      ];
  return lines.map((line) => `${line}\n`).join("");
}

/** `alder-farm, 2026-03-14 and 2026-09-19: drawn at random`. */
export const headOf = ({ farm, visit, sides, pigs }: Compared): string =>
  [...(farm === null ? [] : [farm]), ...(visit == null ? [] : [visit]), `pigs ${pigs}`]
    .join(" · ")
    .concat(` (${listing(sides.map(({ title, pigs: number }) => `${number} ${title}`))})`);

function blockLines(block: Compared, { level, cluster, answer }: CompareReport, style: Style): string[] {
  const asked = { level, cluster, comparisons: block.adjustment.comparisons };
  const made = block.comparisons.filter(({ comparable }) => comparable);
  const refused = block.comparisons.filter(({ comparable }) => !comparable);
  const shares = made.filter(({ kind }) => kind === "indicator");
  const scores = made.filter(({ kind }) => kind === "scale");
  const whole = block.answer === answer || !block.comparable ? [] : wrapped(visible(block.answer), "  ");
  return [
    ...wrapped(visible(headOf(block))).map((line) => style.heading(line)),
    ...whole,
    ...section("How common", shares, asked, block, style),
    ...section("How bad", scores, asked, block, style),
    ...refusedLines(refused, style),
    ...mindLines(block, made, style),
  ];
}

function section(
  title: string,
  some: readonly Comparison[],
  asked: Asked,
  { too_few }: Compared,
  style: Style,
): string[] {
  if (some.length === 0) return [];
  return [
    `  ${style.quiet(title)}`,
    ...some.flatMap((one) => [
      ...wrapped(visible(`${marked(one.title, one.confidence)}: ${sidesOf(one)}`), "  "),
      ...(too_few ? [] : numberTexts(one, asked)).flatMap((text) => wrapped(visible(text), "    ")),
    ]),
  ];
}

/** `7 of 10 on 2026-03-14, 2 of 10 on 2026-09-19`. */
export const sidesOf = ({ sides }: Comparison): string =>
  sides
    .map((side) => {
      const left = side.not_examined === 0 ? "" : ` (${side.not_examined} not examined)`;
      const value =
        side.affected === undefined
          ? `median ${plain(side.median ?? 0)}, mean ${plain(side.mean ?? 0)}, n ${side.examined}`
          : ofExamined(side);
      return `${value} ${side.title}${left}`;
    })
    .join(side(sides[0]?.affected));

const side = (affected: number | undefined): string => (affected === undefined ? "; " : ", ");

/** Comparisons refused for the same reasons are named together. */
function refusedLines(refused: readonly Comparison[], style: Style): string[] {
  if (refused.length === 0) return [];
  return [
    `  ${style.quiet("Not compared")}`,
    ...together(
      refused.flatMap((one) => one.reasons.map(({ text }) => ({ title: one.title, text }))),
    ).flatMap(({ titles, text }) => wrapped(visible(`${few(titles)}: ${text}`), "  - ")),
  ];
}

function mindLines(block: Compared, made: readonly Comparison[], style: Style): string[] {
  const notes = together(
    made.flatMap(({ title, caveats }) => caveatsOf(block, caveats).map(({ text }) => ({ title, text }))),
  ).map(({ titles, text }) => (titles.length === made.length ? text : `${few(titles)}: ${text}`));
  const lines = [...notes, ...block.cautions].flatMap((text) => wrapped(visible(capital(text)), "  - "));
  return lines.length === 0 ? [] : [`  ${style.quiet("Mind")}`, ...lines];
}

export const severalIn = (blocks: readonly Compared[]): boolean =>
  blocks.some(({ adjustment }) => adjustment.comparisons > 1);

/** Where the numbers only describe, what qualifies the tests is left out. */
export const caveatsOf = ({ too_few }: Compared, caveats: Comparison["caveats"]): Comparison["caveats"] =>
  too_few ? caveats.filter(({ although }) => although !== undefined) : caveats;

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Three titles at most, and how many more. */
export const few = (titles: readonly string[]): string =>
  titles.length > 4 ? listing([...titles.slice(0, 3), `${titles.length - 3} more`]) : listing(titles);

/** What is said of several titles is said once. */
export function together(said: readonly { readonly title: string; readonly text: string }[]) {
  const titles = new Map<string, string[]>();
  for (const { title, text } of said) titles.set(text, [...(titles.get(text) ?? []), title]);
  return [...titles].map(([text, some]) => ({ text, titles: some }));
}

function leftOutLines(left: readonly string[], style: Style): string[] {
  if (left.length === 0) return [];
  return [style.heading("Left out"), ...left.flatMap((text) => wrapped(visible(text), "  - ")), ""];
}

function sourceLines({ blocks, level }: CompareReport, style: Style): string[] {
  const made = blocks.flatMap(({ comparisons }) => comparisons.filter(({ comparable }) => comparable));
  if (made.length === 0) return [];
  const cited = new Set(
    made.map(
      ({ title, confidence, source }) => `${marked(title, confidence)}: ${source ?? "no source named"}`,
    ),
  );
  return [
    style.heading("Sources"),
    ...[...cited].flatMap((line) => wrapped(visible(line), "  ")),
    ...compareMethods(made, severalIn(blocks)).flatMap((line) => wrapped(line, "  ")),
    ...wrapped(`Intervals: ${levelPercent(level)}, two-sided, each for itself.`, "  "),
    `  ${memoryLegend}`,
  ];
}
