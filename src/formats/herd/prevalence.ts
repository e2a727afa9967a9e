/** How common it is: tables, and what must be known to read them. */
import type { CombinedEstimate, Corrected, Estimate } from "../../herd/index.ts";
import { accuracyWords, belowFalsePositives, fewPositives } from "../../herd/index.ts";
import { grouped } from "../../words/grouped.ts";
import { capital } from "../../words/listing.ts";
import { levelPercent, percent, percentRange } from "../../words/percent.ts";
import { type Block, type Column, right, table } from "../page/blocks.ts";
import { marked } from "../page/memory-mark.ts";
import { notesOf } from "./csv.ts";

/** An estimate rests on memory when its limit or its scale does. */
export const markOf = (one: Pick<Estimate, "confidence" | "scale">): string | null =>
  [one.confidence, one.scale?.confidence].includes("from-memory") ? "from-memory" : one.confidence;

export function estimateTable(estimates: readonly Estimate[]): Block[] {
  const [first] = estimates;
  if (first === undefined) return [];
  const interval = `${levelPercent(first.level)} interval`;
  const corrected = first.true_prevalence !== undefined;
  return filledTable(
    [
      { head: "" },
      right("affected"),
      right(corrected ? "positive" : "prevalence"),
      right(corrected ? "positive" : "of these pigs"),
      right(interval),
      { ...right("one-sided"), detail: true },
      right("prevalence, corrected"),
      right("of these pigs, corrected"),
      right(interval),
      { ...right("not graded"), detail: true },
      { ...right("not examined"), detail: true },
    ],
    estimates.map((one) => {
      const { true_prevalence: truth, proportion, reach } = one;
      return [
        marked(one.title, markOf(one)),
        `${one.affected} of ${one.examined}`,
        ...inColumn(reach, share(proportion)),
        range(one.lower, one.upper),
        truth === undefined ? oneSidedCell(one) : "",
        ...inColumn(reach, truth === undefined ? "" : share(truth.prevalence)),
        truth === undefined ? "" : range(truth.lower, truth.upper),
        one.not_graded === 0 ? "" : String(one.not_graded),
        one.not_examined === 0 ? "" : String(one.not_examined),
      ];
    }),
  );
}

/** A share stands below what it may be called. */
const inColumn = (reach: Estimate["reach"], shown: string): [string, string] =>
  reach === "prevalence" ? [shown, ""] : ["", shown];

/** At 0 of n and n of n: what can be said with the whole confidence on one side. */
function oneSidedCell({ one_sided: found, examined }: Estimate): string {
  if (found === null || examined < 2) return "";
  return `${found.limit === "upper" ? "at most" : "at least"} ${percent(found.value)}`;
}

/** What must be known to read the intervals, each once, with the titles that it holds for unless it holds for all. */
export function intervalRemarks(estimates: readonly Estimate[]): string[] {
  const examined = estimates.filter((one) => one.examined > 0);
  return remarksOf(
    examined.map((one) => ({
      title: one.title,
      notes: [
        ...(one.true_prevalence === undefined ? [] : correctedNotes(one.true_prevalence)),
        ...notesOf(one),
      ],
    })),
  );
}

const correctedNotes = (truth: Corrected): string[] => [
  `corrected for ${accuracyWords(truth)}`,
  ...(belowFalsePositives(truth) ? [fewPositives] : []),
  ...(truth.withheld === null ? [] : [truth.withheld]),
];

/** Each note once, with the titles that it holds for unless it holds for all. */
export function remarksOf(
  noted: readonly { readonly title: string; readonly notes: readonly string[] }[],
): string[] {
  const remarks = noted.flatMap(({ title, notes }) => notes.map((note) => ({ title, note })));
  return [...grouped(remarks, ({ note }) => note)].map(([note, some]) =>
    some.length === noted.length ? `${capital(note)}.` : `${titlesOf(some)}: ${note}.`,
  );
}

/** Groups that were combined. */
export function combinedTable(combined: readonly CombinedEstimate[]): Block[] {
  const made = combined.filter((one) => one.refused === null);
  const [first] = made;
  if (first === undefined) return [];
  return table(
    [
      { head: "" },
      right("prevalence"),
      right(`${levelPercent(first.level)} interval`),
      { head: "affected of examined, group (pigs)", detail: true },
    ],
    made.map((one) => [
      marked(one.title, markOf(one)),
      share(one.proportion),
      range(one.lower, one.upper),
      one.groups
        .map(
          ({ group, head, affected, examined }) =>
            `${affected} of ${examined} ${group ?? "no group"} (${head})`,
        )
        .join(", "),
    ]),
  );
}

/** Why groups were not combined, each reason once. */
export const refusals = (combined: readonly CombinedEstimate[]): string[] => {
  const without = combined.filter(({ refused }) => refused !== null);
  return [...grouped(without, ({ refused }) => refused)].map(([reason, some]) =>
    some.length === combined.length
      ? `Not combined, because ${reason}.`
      : `${titlesOf(some)}: not combined, because ${reason}.`,
  );
};

const titlesOf = (some: readonly { readonly title: string }[]): string =>
  some.map(({ title }) => title).join("; ");

const share = (value: number | null): string => (value === null ? "" : percent(value));
const range = (lower: number | null, upper: number | null): string =>
  lower === null || upper === null ? "" : percentRange(lower, upper);

/** A table without the columns in which no row says anything. */
export function filledTable(columns: readonly Column[], rows: readonly (readonly string[])[]): Block[] {
  const filled = (at: number) => at === 0 || rows.some((row) => (row[at] ?? "") !== "");
  return table(
    columns.filter((_, at) => filled(at)),
    rows.map((row) => row.filter((_, at) => filled(at))),
  );
}
