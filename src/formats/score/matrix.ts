/** The pattern over pigs at a glance: a row a pig, a column a scale (or a part, when there is one scale only). */
import type { Archive } from "../../cases/index.ts";
import type { Scale } from "../../knowledge/index.ts";
import type { ScoredCase } from "../../score/index.ts";
import { count, listing } from "../../words/listing.ts";
import { visible } from "../../words/visible.ts";
import type { Style } from "../page/style.ts";
import { wrapped } from "../page/width.ts";
import { type Alphabet, type Mark, markCharacter, markLegend, partMark, scoreMark } from "./matrix-marks.ts";
import { type ScoredRow, type ScoredVisit, scoredVisits, usedScales } from "./visits.ts";

const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";

export interface Look {
  readonly style: Style;
  readonly alphabet: Alphabet;
  /** Characters a line; default 80. */
  readonly width?: number;
}

interface Column {
  readonly words: string;
  readonly mark: (row: ScoredRow) => Mark;
}

interface Row {
  readonly id: string;
  readonly group: string;
  readonly marks: readonly Mark[];
}

/**
 * A matrix for each visit, no line wider than the page: columns that do not fit follow in a further block, columns
 * in which nothing is recorded are only named. The worst pig stands at the top.
 * @param width characters a line, 60 or more
 */
export function scoreMatrix(
  scored: readonly ScoredCase[],
  archive: Archive,
  { style, alphabet, width = 80 }: Look,
): string {
  const visits = scoredVisits(scored, archive);
  const columns = columnsOf(usedScales(visits));
  const blocks = visits.flatMap((visit) => visitBlock(visit, columns, { style, alphabet, width }));
  return [...blocks, ...wrap(markLegend(alphabet), "", width)].map((line) => `${line}\n`).join("");
}

function columnsOf(used: readonly Scale[]): Column[] {
  const [only] = used;
  if (only !== undefined && used.length === 1) return partColumns(only);
  return used.map((scale) => ({
    words: scale.id,
    mark: ({ one, scores }) => scoreMark(scores.get(scale), scale, one),
  }));
}

/** The parts of a scale, and then its score. */
function partColumns(scale: Scale): Column[] {
  const whole = {
    words: scale.id,
    mark: ({ one, scores }: ScoredRow) => scoreMark(scores.get(scale), scale, one),
  };
  const parts = Object.keys(scale.parts).map((name) => ({
    words: name,
    mark: ({ one, scores }: ScoredRow) => partMark(name, scores.get(scale), scale, one),
  }));
  return parts.length > 1 ? [...parts, whole] : [whole];
}

function visitBlock(
  { title, rows }: ScoredVisit,
  columns: readonly Column[],
  look: Required<Look>,
): string[] {
  const { style, width } = look;
  const all = columns.map((column) => ({ ...column, marks: rows.map((row) => column.mark(row)) }));
  const shown = all.filter(({ marks }) => marks.some((mark) => mark !== "not recorded"));
  const left = all.filter((column) => !shown.includes(column)).map(({ words }) => words);
  const lines: Row[] = rows
    .map(({ one }, index) => ({
      id: shortened(visible(one.id), 22),
      group: shortened(visible(one.record.pig?.group ?? ""), 14),
      marks: shown.map(({ marks }) => marks[index] ?? "not recorded"),
    }))
    .sort((a, b) => badness(b) - badness(a));
  return [
    style.heading(visible(`${title} (${count(rows.length, "pig")})`)),
    ...matrix(
      lines,
      shown.map(({ words }) => words),
      look,
    ),
    ...(left.length === 0 ? [] : wrapped(`Nothing recorded for ${listing(left)}.`, "  ", width)),
    "",
  ];
}

/** Mean of the marks that have an order; pigs without any stand last. */
function badness({ marks }: Row): number {
  const values = marks.filter((mark) => typeof mark === "number");
  return values.length === 0 ? -1 : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function matrix(
  rows: readonly Row[],
  words: readonly string[],
  { style, alphabet, width }: Required<Look>,
): string[] {
  const idWidth = Math.max(...rows.map(({ id }) => id.length));
  const groupWidth = Math.max(...rows.map(({ group }) => group.length));
  const begin = `  ${" ".repeat(idWidth)}  ${" ".repeat(groupWidth)} `;
  const most = Math.max(1, Math.min(letters.length, Math.floor((width - begin.length) / 2)));
  const blocks = Array.from({ length: Math.ceil(words.length / most) }, (_, index) => index * most);
  return blocks.flatMap((from) => {
    const heads = words.slice(from, from + most);
    const lettered = heads.map((_, index) => letters[index] ?? "?");
    return [
      style.quiet(`${begin} ${lettered.join(" ")}`),
      ...rows.map(({ id, group, marks }) => {
        const cells = marks.slice(from, from + most).map((mark) => markCharacter(mark, alphabet));
        return `  ${id.padEnd(idWidth)}  ${group.padEnd(groupWidth)}  ${cells.join(" ")}`;
      }),
      ...wrap(heads.map((name, index) => `${lettered[index]} ${visible(name)}`).join("   "), "  ", width),
    ];
  });
}

/** The end of a name tells pigs of a visit apart, so the beginning is left out. */
const shortened = (text: string, most: number): string =>
  text.length <= most ? text : `..${text.slice(text.length - most + 2)}`;

/** Lines of at most `width` characters, broken where three blanks stand, and at a blank where a piece is longer. */
function wrap(text: string, indent: string, width: number): string[] {
  const lines: string[] = [];
  for (const piece of text.split("   ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 3 + piece.length <= width)
      lines[lines.length - 1] = `${last}   ${piece}`;
    else lines.push(...wrapped(piece, indent, width));
  }
  return lines;
}
