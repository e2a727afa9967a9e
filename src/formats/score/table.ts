/** The table of scores of a visit, no wider than the page: columns that do not fit follow in a further block. */
import type { Scale } from "../../knowledge/index.ts";
import { type CaseScore, printedScore } from "../../score/index.ts";
import { visible } from "../../words/visible.ts";
import { marked } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { table } from "../page/table.ts";
import type { ScoredRow } from "./visits.ts";

interface ScoreColumn {
  readonly heads: readonly [string, string];
  readonly cells: readonly string[];
  readonly right: boolean;
}

/** @param width characters a line; a block has one scale at least, however wide */
export function scoreTable(
  rows: readonly ScoredRow[],
  used: readonly Scale[],
  style: Style,
  width: number,
): string[] {
  const id = leading(
    "case",
    rows.map(({ one }) => one.id),
  );
  const place = [
    leading(
      "group",
      rows.map(({ one }) => one.record.pig?.group),
    ),
    leading(
      "basis",
      rows.map(({ one }) => one.record.selection?.basis),
    ),
  ];
  const scales = used.map((scale) => scaleColumn(scale, rows));
  return blocksOf(scales, [id, ...place], [id], width - 2).flatMap((block) => {
    const second = block.map(({ heads }) => heads[1]);
    const body = rows.map((_, index) => block.map(({ cells }) => cells[index] ?? ""));
    const columns = block.map(({ heads, right }) => ({ head: heads[0], right }));
    const lines = table(columns, [second, ...body]);
    return lines.map((line, index) => `  ${index < 2 ? style.quiet(line) : line}`);
  });
}

const leading = (head: string, cells: readonly (string | undefined)[]): ScoreColumn => ({
  heads: ["", head],
  cells: cells.map((cell) => (cell === undefined ? "–" : visible(cell))),
  right: false,
});

const scaleColumn = (scale: Scale, rows: readonly ScoredRow[]): ScoreColumn => ({
  heads: [visible(scale.short[0] ?? ""), `${visible(scale.short[1] ?? "")} `],
  cells: rows.map(({ scores }) => cell(scale, scores.get(scale))),
  right: true,
});

const cell = (scale: Scale, score: CaseScore | undefined): string =>
  score === undefined || score.value === null
    ? "– "
    : marked(printedScore(scale, score.value), score.confidence, true);

/** Columns in blocks that fit; the first begins with all leading columns, those that follow with the case alone. */
function blocksOf(
  scales: readonly ScoreColumn[],
  first: readonly ScoreColumn[],
  further: readonly ScoreColumn[],
  width: number,
): ScoreColumn[][] {
  const blocks: ScoreColumn[][] = [[...first]];
  let left = width - widthOf(first);
  let scalesIn = 0;
  for (const column of scales) {
    const needed = widthOf([column]);
    if (needed > left && scalesIn > 0) {
      blocks.push([...further]);
      left = width - widthOf(further);
      scalesIn = 0;
    }
    blocks.at(-1)?.push(column);
    left -= needed;
    scalesIn += 1;
  }
  return blocks;
}

/** With two blanks behind each column. */
const widthOf = (columns: readonly ScoreColumn[]): number =>
  columns.reduce(
    (sum, { heads, cells }) => sum + 2 + Math.max(...[...heads, ...cells].map((text) => text.length)),
    0,
  );
