/** Cells and remarks that herd numbers show alike in text and Markdown; nothing in them is made safe to show yet. */
import type { CombinedEstimate, Estimate, HerdScores, IndexResult } from "../herd/index.ts";
import { accuracyWords, belowFalsePositives, fewPositives, reachOf } from "../herd/index.ts";
import { levelPercent, percent, percentRange } from "../words/percent.ts";
import { marked } from "./memory-mark.ts";
import { number } from "./numbers.ts";
import type { Column } from "./table.ts";

export interface Cells {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
}

/** An estimate rests on memory when its limit or its scale does. */
export const markOf = (one: Pick<Estimate, "confidence" | "scale">): string | null =>
  [one.confidence, one.scale?.confidence].includes("from-memory") ? "from-memory" : one.confidence;

export function estimateCells(estimates: readonly Estimate[]): Cells {
  const [first] = estimates;
  if (first === undefined) return { columns: [], rows: [] };
  const interval = `${levelPercent(first.level)} interval`;
  const head = reachOf(first.basis).prevalence ? "prevalence" : "of these pigs";
  return withoutBlank({
    columns: [
      { head: "" },
      right("affected"),
      right(first.true_prevalence === undefined ? head : "positive"),
      right(interval),
      right("one-sided"),
      right(`${head}, corrected`),
      right(interval),
      right("not examined"),
    ],
    rows: estimates.map((one) => [
      marked(one.title, markOf(one)),
      `${one.affected} of ${one.examined}`,
      share(one.proportion),
      range(one.lower, one.upper),
      one.true_prevalence === undefined ? oneSidedCell(one) : "",
      one.true_prevalence === undefined ? "" : share(one.true_prevalence.prevalence),
      one.true_prevalence === undefined ? "" : range(one.true_prevalence.lower, one.true_prevalence.upper),
      one.not_examined === 0 ? "" : String(one.not_examined),
    ]),
  });
}

/** At 0 of n and n of n: what can be said with the whole confidence on one side. */
function oneSidedCell({ one_sided: found, examined }: Estimate): string {
  if (found === null || examined < 2) return "";
  return `${found.limit === "upper" ? "at most" : "at least"} ${percent(found.value)}`;
}

/** What must be known to read the intervals, each once, with the titles that it holds for unless it holds for all. */
export function intervalRemarks(estimates: readonly Estimate[]): string[] {
  const examined = estimates.filter((one) => one.examined > 0);
  const remarks = new Map<string, string[]>();
  for (const { title, notes = [], true_prevalence: truth } of examined) {
    const accuracy =
      truth === undefined
        ? []
        : [`corrected for ${accuracyWords(truth)}`, ...(belowFalsePositives(truth) ? [fewPositives] : [])];
    for (const note of [...accuracy, ...notes]) remarks.set(note, [...(remarks.get(note) ?? []), title]);
  }
  return [...remarks].map(([note, titles]) =>
    titles.length === examined.length
      ? `${note.charAt(0).toUpperCase()}${note.slice(1)}.`
      : `${titles.join("; ")}: ${note}.`,
  );
}

export function scoreCells(scores: readonly HerdScores[]): Cells {
  const level = scores.find((one) => one.level !== undefined)?.level;
  const interval = level === undefined ? "" : `${levelPercent(level)} interval`;
  return withoutBlank({
    columns: [
      { head: "" },
      right("n"),
      right("mean"),
      right(interval),
      right("bootstrap"),
      right("median"),
      right(interval),
      right("quartiles"),
      { head: "score:pigs" },
    ],
    rows: scores.map((one) => [
      marked(one.title, one.confidence),
      String(one.n),
      number(one.mean),
      points(one.mean_interval),
      points(one.bootstrap),
      number(one.median, 1),
      points(one.median_interval),
      `${number(one.q1, 1)} to ${number(one.q3, 1)}`,
      one.distribution.map(({ value, count: pigs }) => `${number(value, 1)}:${pigs}`).join(" "),
    ]),
  });
}

/** Whether the shares of these pigs were counted by pen, room or litter. */
export const countedByPen = (estimates: readonly Estimate[]): boolean =>
  estimates.some(({ clusters }) => clusters !== undefined);

/** Said of scores where the pigs were counted by pen. */
export const scoresSingly = "Intervals of scores take the pigs as drawn singly, whatever their pens.";

/** `Snout grade 0-5: 1 or more 75.0 % (19.4 to 99.4 %), 2 or more ...` for scales of few grades. */
export const gradeRemarks = (scores: readonly HerdScores[]): string[] =>
  scores.flatMap(({ title, confidence, at_or_above: grades = [] }) =>
    grades.length === 0
      ? []
      : [
          `${marked(title, confidence)}: ${grades
            .map(({ grade, share: part, lower, upper }) => {
              const limits =
                lower === undefined || upper === undefined ? "" : ` (${percentRange(lower, upper)})`;
              return `${grade} or more ${percent(part)}${limits}`;
            })
            .join(", ")}`,
        ],
  );

export const indexCells = (scores: readonly HerdScores[]): string[] =>
  scores.flatMap((one) => (one.n === 0 ? [] : one.indices.map((index) => indexCell(one, index))));

/** An index rests on memory when it or its scale does. */
function indexCell({ confidence: scale }: HerdScores, index: IndexResult): string {
  const { title, value, unit, class: named, no_class: withheld, confidence } = index;
  const shown = value === null ? "–" : unit === "share" ? percent(value) : number(value);
  const mark = [scale, confidence].includes("from-memory") ? "from-memory" : confidence;
  const note = named ?? (withheld === undefined ? "" : "no class");
  return `${marked(title, mark)}: ${shown}${note === "" ? "" : ` (${note})`}`;
}

/** Groups that were combined. */
export function combinedCells(combined: readonly CombinedEstimate[]): Cells {
  const rows = combined.filter((one) => one.refused === null);
  const [first] = rows;
  if (first === undefined) return { columns: [], rows: [] };
  return {
    columns: [
      { head: "" },
      right("prevalence"),
      right(`${levelPercent(first.level)} interval`),
      { head: "affected of examined, group (pigs)" },
    ],
    rows: rows.map((one) => [
      marked(one.title, markOf(one)),
      share(one.proportion),
      range(one.lower, one.upper),
      one.groups
        .map(
          ({ group, head, affected, examined }) =>
            `${affected} of ${examined} ${group ?? "no group"} (${head ?? "?"})`,
        )
        .join(", "),
    ]),
  };
}

/** Why groups were not combined, each reason once. */
export const refusals = (combined: readonly CombinedEstimate[]): string[] => {
  const reasons = new Map<string, string[]>();
  for (const { title, refused } of combined)
    if (refused !== null) reasons.set(refused, [...(reasons.get(refused) ?? []), title]);
  return [...reasons].map(([reason, titles]) =>
    titles.length === combined.length
      ? `Not combined, because ${reason}.`
      : `${titles.join("; ")}: not combined, because ${reason}.`,
  );
};

const right = (head: string): Column => ({ head, right: true });
const share = (value: number | null): string => (value === null ? "–" : percent(value));
const range = (lower: number | null, upper: number | null): string =>
  lower === null || upper === null ? "–" : percentRange(lower, upper);
const points = (limits: { lower: number | null; upper: number | null } | undefined): string =>
  limits === undefined || limits.lower === null || limits.upper === null
    ? ""
    : `${number(limits.lower)} to ${number(limits.upper)}`;

/** Columns in which no row says anything are left out. */
function withoutBlank({ columns, rows }: Cells): Cells {
  const shown = columns.map((_, index) => index === 0 || rows.some((row) => (row[index] ?? "") !== ""));
  return {
    columns: columns.filter((_, index) => shown[index]),
    rows: rows.map((row) => row.filter((_, index) => shown[index])),
  };
}
