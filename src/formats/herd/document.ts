/**
 * Herd numbers for people, as text or as Markdown: the answer in sentences, then how bad it is on one scale an organ; all
 * the rest, a part a stratum, where it is asked for.
 */
import type { CombinedEstimate } from "../../herd/index.ts";
import { reachOf } from "../../herd/index.ts";
import type { SnoutReading } from "../../reading/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count } from "../../words/listing.ts";
import { type Block, type Form, gap, heading, list, remarks, text } from "../page/blocks.ts";
import { markdownOf } from "../page/markdown.ts";
import { memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { answerBlocks } from "./answers.ts";
import { moreWithAll, toldFirst } from "./more.ts";
import { combinedTable, estimateTable, intervalRemarks, refusals } from "./prevalence.ts";
import { gradeRemarks, indexLines, meanRemarks, scoreTable, shareRemarks } from "./scores.ts";
import { herdNotes, herdSources } from "./sources.ts";
import { byStratum, type HerdNumbers, numbersTitle, type StratumNumbers, stratumTitle } from "./strata.ts";

export interface HerdLook {
  /** Characters a line. */
  readonly width?: number;
  /** The reading of the snouts. */
  readonly snouts?: readonly SnoutReading[];
  /** Every number, and who says so. */
  readonly all?: boolean;
  /** Nothing but the answers. */
  readonly quiet?: boolean;
}

export const herdText = (report: HerdNumbers, style: Style, look: HerdLook = {}): string =>
  textOf(herdDocument(report, "text", look), style, look.width);

export const herdMarkdown = (report: HerdNumbers, look: HerdLook = {}): string =>
  markdownOf(herdDocument(report, "markdown", look));

function herdDocument(
  report: HerdNumbers,
  form: Form,
  { snouts = [], all = false, quiet = false }: HerdLook,
): Block[] {
  const answers = answerBlocks(report, { scales: !all && !quiet });
  const combined = combinedBlocks(report.combined ?? []);
  if (quiet) return [...answers, ...combined];
  if (!all) {
    const [first, ...others] = snouts.map((reading) => firstStatements(reading, form));
    return [
      ...answers,
      ...combined,
      ...(first === undefined ? [] : list("Snouts", [first, ...others].flat(), { bullet: "- " })),
      ...(snouts.length > 0 ? [] : [gap]),
      ...moreWithAll(report, snouts),
    ];
  }
  return [
    ...answers,
    ...combined,
    ...byStratum(report).flatMap(stratumBlocks),
    ...list("Notes", herdNotes(report)),
    ...seedBlocks(report),
    ...list("Sources", [...herdSources(report), memoryLegend]),
    ...snouts.flatMap((reading) => snoutBlocks(reading, form)),
  ];
}

function stratumBlocks(numbers: StratumNumbers): Block[] {
  const { estimates, scores, basis } = numbers;
  const reach = reachOf(basis);
  const warning = reach.prevalence || estimates.length === 0 ? [] : [`These numbers are ${reach.wording}.`];
  return [
    heading(numbersTitle(numbers)),
    ...estimateTable(estimates),
    ...remarks([...warning, ...intervalRemarks(estimates)]),
    ...(estimates.length > 0 && scores.length > 0 ? [gap] : []),
    ...scoreTable(scores),
    ...remarks(meanRemarks(scores)),
    ...list("at or above each grade", gradeRemarks(scores), { indent: 2 }),
    ...remarks(shareRemarks(scores, estimates)),
    ...list("herd indices", indexLines(scores), { indent: 2 }),
  ];
}

/** Groups combined, a part for every visit, age class and basis. */
function combinedBlocks(combined: readonly CombinedEstimate[]): Block[] {
  const parts = grouped(combined, ({ stratum, basis }) => stratumTitle(stratum, basis));
  return [...parts].flatMap(([title, some]) => [
    heading(`${title} · groups combined by head count`),
    ...combinedTable(some),
    ...remarks(refusals(some)),
  ]);
}

/** The seed, so that somebody else can make the same numbers. */
function seedBlocks({ scores }: HerdNumbers): Block[] {
  const made = scores.find(({ bootstrap }) => (bootstrap?.resamples ?? 0) > 0)?.bootstrap;
  if (made === undefined) return [];
  return [gap, text(`Bootstrap: seed ${made.seed}, ${made.resamples} resamples.`, { indent: 0 })];
}

const firstStatements = (reading: SnoutReading, form: Form): string[] =>
  toldFirst(reading).map((one) => `${reading.visit}: ${statementText(one, form)}`);

const statementText = ({ text: said, source }: SnoutReading["statements"][number], form: Form): string =>
  `${said} ${form === "text" ? `[${source}]` : `(${source})`}`;

/** A sentence a line, each with who says so. */
const snoutBlocks = ({ visit, snouts, statements }: SnoutReading, form: Form): Block[] => [
  heading(`Snouts of visit ${visit} (${count(snouts, "snout")})`),
  ...list(
    null,
    statements.map((one) => statementText(one, form)),
    { bullet: "- " },
  ),
];
