/** How bad it is: the table, grades and herd indices. */
import { type Estimate, type HerdScores, type IndexResult, TOO_FEW_DIFFER } from "../../herd/index.ts";
import { rangeDecimals } from "../../score/index.ts";
import { levelPercent, percent, percentRange } from "../../words/percent.ts";
import { type Block, right } from "../page/blocks.ts";
import { marked } from "../page/memory-mark.ts";
import { number } from "../page/numbers.ts";
import { filledTable, remarksOf } from "./prevalence.ts";

export function scoreTable(scores: readonly HerdScores[]): Block[] {
  const level = scores.find((one) => one.level !== undefined)?.level;
  const interval = level === undefined ? "" : `${levelPercent(level)} interval`;
  return filledTable(
    [
      { head: "" },
      right("n"),
      right("mean"),
      right(interval),
      right("bootstrap"),
      right("median"),
      right(interval),
      { ...right("quartiles"), detail: true },
      { head: "score:pigs", detail: true },
    ],
    scores.map(scoreRow),
  );
}

/** The middle with the decimals of the scale, means and limits with two at least. */
function scoreRow(one: HerdScores): string[] {
  const decimals = rangeDecimals(one.range);
  const fine = Math.max(2, decimals);
  return [
    marked(one.title, one.confidence),
    String(one.n),
    number(one.mean, fine),
    points(one.mean_interval, fine),
    points(one.bootstrap, fine),
    number(one.median, decimals),
    points(one.median_interval, fine),
    one.nominal || one.n === 0 ? "–" : `${number(one.q1, decimals)} to ${number(one.q3, decimals)}`,
    one.distribution.map(({ value, count: pigs }) => `${number(value, decimals)}:${pigs}`).join(" "),
  ];
}

/** Why scores have no mean, or the mean no interval. */
export function meanRemarks(scores: readonly HerdScores[]): string[] {
  const titles = scores.filter(({ nominal, n }) => nominal && n > 0).map(({ title }) => title);
  return [
    ...(titles.length === 0
      ? []
      : [`${titles.join("; ")}: the grades are names without an order, so they have no mean and no median.`]),
    ...scores.flatMap(({ title, mean_interval: mean, at_or_above: grades = [] }) =>
      mean?.reason?.startsWith(TOO_FEW_DIFFER) === true
        ? [`${title}: ${mean.reason}${grades.length > 0 ? "; see the shares at or above each grade" : ""}.`]
        : [],
    ),
  ];
}

/** `Snout grade 0-5: 1 or more 75.0 % (19.4 to 99.4 %), 2 or more ...` for scales of few grades. */
export const gradeRemarks = (scores: readonly HerdScores[]): string[] =>
  scores.flatMap(({ title, confidence, at_or_above: grades = [] }) =>
    grades.length === 0
      ? []
      : [
          `${marked(title, confidence)}: ${grades
            .map(({ grade, pigs, share: part, lower, upper }) => {
              const limits =
                typeof lower === "number" && typeof upper === "number"
                  ? ` (${percentRange(lower, upper)})`
                  : "";
              return `${grade} or more ${part === null ? pigs : percent(part)}${limits}`;
            })
            .join(", ")}`,
        ],
  );

/**
 * What must be known to read the shares at or above each grade, where it is not said with the proportions of the same
 * pigs already; and what the other intervals of scores are of, where the shares are not of pigs drawn singly from a large group.
 */
export function shareRemarks(scores: readonly HerdScores[], estimates: readonly Estimate[]): string[] {
  const said = new Set(estimates.flatMap(({ notes = [] }) => notes));
  const shares = scores.flatMap(({ title, at_or_above: grades = [] }) =>
    grades.map(({ grade, notes = [] }) => ({
      title: `${title}, ${grade} or more`,
      notes: notes.filter((note) => !said.has(note)),
    })),
  );
  const byPen = estimates.some(({ clusters }) => clusters !== undefined);
  const ofGroup = estimates.some(({ population }) => population !== undefined);
  const middle = scores.some(({ mean_interval }) => typeof mean_interval?.lower === "number");
  const weighed = estimates.some(({ groups }) => groups !== undefined);
  return [
    ...remarksOf(shares),
    ...(weighed && scores.some(({ n, reach }) => n > 0 && reach === "these-pigs")
      ? ["Means, medians and herd indices are of these pigs: they weigh no groups."]
      : []),
    ...(byPen && middle
      ? ["Intervals of means and medians take the pigs as drawn singly, whatever their pens."]
      : []),
    ...(ofGroup && middle ? ["Intervals of means and medians are those for a large group."] : []),
  ];
}

export const indexLines = (scores: readonly HerdScores[]): string[] =>
  scores.flatMap((one) => (one.n === 0 ? [] : one.indices.map((index) => indexCell(one, index))));

/** An index rests on memory when it or its scale does. */
function indexCell({ confidence: scale }: HerdScores, index: IndexResult): string {
  const { title, value, unit, class: named, no_class: withheld, caution, confidence, decimals } = index;
  const shown = value === null ? "–" : unit === "share" ? shareOf(value, decimals) : number(value, decimals);
  const mark = [scale, confidence].includes("from-memory") ? "from-memory" : confidence;
  const note = [named ?? (withheld === undefined ? "" : "no class"), caution ?? ""]
    .filter((part) => part !== "")
    .join("; ");
  return `${marked(title, mark)}: ${shown}${note === "" ? "" : ` (${note})`}`;
}

/** Per cent with one decimal, or with as many more as the class asks for. */
const shareOf = (value: number, decimals: number): string =>
  decimals <= 3 ? percent(value) : `${number(value * 100, decimals - 2)} %`;

const points = (
  limits: { lower: number | null; upper: number | null } | undefined,
  decimals: number,
): string =>
  limits === undefined || limits.lower === null || limits.upper === null
    ? ""
    : `${number(limits.lower, decimals)} to ${number(limits.upper, decimals)}`;
