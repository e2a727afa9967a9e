/** Proportions drawn one below the other: a row a stratum, its interval a line on an axis from 0 to 100 per cent. */
import type { HerdReport } from "../../herd/index.ts";
import { levelPercent } from "../../words/percent.ts";
import { visible } from "../../words/visible.ts";
import { marked, memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { displayWidth, fitted, folded, wrapped } from "../page/width.ts";
import { notesOf } from "./csv.ts";
import { plotRows, type Row } from "./plot-rows.ts";
import { markOf } from "./prevalence.ts";
import { methodSources } from "./sources.ts";
import { stratumTitle } from "./strata.ts";

const width = 80;
/** Cells of the axis: each stands for 5 per cent where room is short, for 2 where there is enough. */
const shortestAxis = 21;
const longestAxis = 51;

/**
 * A picture for each indicator, in plain characters and no line wider than 80 cells. Where a test was said to err, the
 * corrected shares are drawn.
 */
export function herdPlot(report: HerdReport, style: Style): string {
  const rows = plotRows(report);
  const lines = [...pictures(rows, style), ...legend(report, rows.flat())];
  return lines.map((line) => `${line}\n`).join("");
}

/** All pictures on axes of the same length, so that they can be compared. */
function pictures(all: readonly (readonly Row[])[], style: Style): string[] {
  const rows = all.flat();
  const numbers = [0, 1, 2].map((at) => Math.max(0, ...rows.map((row) => row.numbers[at]?.length ?? 0)));
  const wanted = Math.max(0, ...rows.map(({ name, basis }) => labelWidth(name, basis)));
  const room = width - 2 - 2 - 2 - 2 - 2 - numbers.reduce((sum, one) => sum + one, 0);
  const label = Math.min(wanted, room - shortestAxis);
  const axis = Math.min(longestAxis, room - label);
  return all.flatMap((some) => picture(some, { label, axis, numbers }, style));
}

/** Cells that each part of a row may take. */
interface Widths {
  readonly label: number;
  readonly axis: number;
  readonly numbers: readonly number[];
}

function picture(rows: readonly Row[], { label, axis, numbers }: Widths, style: Style): string[] {
  const first = rows[0]?.one;
  if (first === undefined) return [];
  const what =
    "true_prevalence" in first && first.true_prevalence !== undefined
      ? ", corrected for errors of the test"
      : "";
  const limits = rows.some(({ share }) => share.lower !== null)
    ? ` (${levelPercent(first.level)} intervals${what})`
    : "";
  const title = `${marked(first.title, markOf(first))}${limits}`;
  const indent = " ".repeat(label + 4);
  return [
    ...folded(visible(title), width).map((line) => style.heading(line)),
    style.quiet(`${indent}${scaleLine(axis)}`),
    ...rows.flatMap((row, index) => {
      const changed = row.place !== "" && row.place !== rows[index - 1]?.place;
      const line = `  ${labelOf(row, label)}  ${bar(row, axis)}  ${row.numbers.map((text, at) => (at === 2 ? text : text.padStart(numbers[at] ?? 0))).join("  ")}`;
      return [...(changed ? [fitted(row.place, width).trimEnd()] : []), line.trimEnd()];
    }),
    "",
  ];
}

const labelWidth = (name: string, basis: string): number =>
  displayWidth(basis) + (name === "" ? 0 : displayWidth(name) + 1);

/** Name and basis in so many cells; what is too long of the name is cut. */
function labelOf({ name, basis }: Row, cells: number): string {
  const room = cells - displayWidth(basis) - 1;
  if (name === "" || room < 2) return fitted(basis, cells);
  const shown = labelWidth(name, basis) > cells ? fitted(name, room) : name;
  return fitted(`${shown} ${basis}`, cells);
}

/** 0, 50 and 100 over the cells that they stand for. */
function scaleLine(axis: number): string {
  const line = Array.from({ length: axis }, () => " ");
  const put = (at: number, text: string) => {
    for (const [index, char] of [...text].entries()) line[at + index] = char;
  };
  put(0, "0");
  put(cellOf(0.5, axis) - 1, "50");
  put(axis - 5, "100 %");
  return line.join("").trimEnd();
}

/** The cell of a share from 0 to 1. */
const cellOf = (share: number, axis: number): number => Math.round(share * (axis - 1));

/** Points mark every quarter, `=` the interval, `O` or `x` the estimate. */
function bar({ one, share }: Row, axis: number): string {
  const line = Array.from({ length: axis }, () => " ");
  for (const quarter of [0, 0.25, 0.5, 0.75, 1]) line[cellOf(quarter, axis)] = ".";
  const { value, lower, upper } = share;
  if (lower !== null && upper !== null) line.fill("=", cellOf(lower, axis), cellOf(upper, axis) + 1);
  if (value !== null) line[cellOf(value, axis)] = one.reach === "prevalence" ? "O" : "x";
  return line.join("");
}

const weighted =
  "combined: the groups together, each weighted by its head count; affected/examined are counted without weights";

function legend(report: HerdReport, drawn: readonly Row[]): string[] {
  const { estimates, combined = [] } = report;
  const reaches = new Set([...estimates, ...combined].map(({ reach }) => reach));
  const notes = new Set([
    ...estimates.flatMap(notesOf),
    ...estimates.flatMap((one) => one.true_prevalence?.withheld ?? []),
    ...combined.flatMap(({ stratum, basis, refused }) =>
      refused === null ? [] : [`${stratumTitle(stratum, basis)}: not combined, because ${refused}`],
    ),
  ]);
  const sources = methodSources({ ...report, scores: [] });
  const memory =
    estimates.some((one) => markOf(one) === "from-memory") || sources.some((line) => line.includes("*"));
  return [
    ...(reaches.has("prevalence")
      ? ["O  estimated prevalence, of pigs drawn at random or a whole group"]
      : []),
    ...(reaches.has("these-pigs")
      ? ["x  share of the pigs examined: it says nothing of how common it is in the group"]
      : []),
    ...(drawn.some(({ share }) => share.lower !== null) ? ["=  interval"] : []),
    ...(combined.some(({ refused }) => refused === null) ? wrapped(weighted, "", width) : []),
    ...[...notes].flatMap((note) => wrapped(visible(note), "-  ", width)),
    ...sources.flatMap((line) => wrapped(line, "", width)),
    ...(memory ? [memoryLegend] : []),
  ];
}
