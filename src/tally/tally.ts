/** A tally as cases: each row a pig, each column a value of its case. All of it, or what is wrong with it. */
import { resolve } from "node:path";
import { ArchiveContext } from "../cases/files/archive-context.ts";
import type { Case, Fault } from "../cases/index.ts";
import { caseColumn } from "../cases/settings/case-columns.ts";
import { count } from "../words/listing.ts";
import { columnsOf } from "./columns.ts";
import { type Head, type HeadColumn, headOf } from "./head.ts";
import { type Made, makeCase, numberOf } from "./make-case.ts";
import { Rows } from "./rows.ts";
import { type Cell, noCell, Table, TableFault } from "./table.ts";
import { mannerOf } from "./values.ts";
import { VisitOf } from "./visit-of.ts";
import type { NewCase, NewFile, TallyWish } from "./wish.ts";

export interface Tally {
  /** How the table was read, in words. */
  readonly said: readonly string[];
  /** In which the cases are written. */
  readonly folder: string;
  readonly cases: readonly NewCase[];
  /** The visit file, where there is none yet. */
  readonly visit: NewFile | undefined;
  /** Cases that the visit must name itself, because its file is there already. */
  readonly unnamed: string | undefined;
  /** As they will be read, for the alarms. */
  readonly drafts: readonly Case[];
}

/** A table with columns of which nobody said what they are. */
export interface Unmapped {
  readonly said: readonly string[];
  readonly unknown: readonly HeadColumn[];
  readonly faults: readonly Fault[];
}

const mostRows = 5000;
/** More faults are not listed one by one. */
const mostFaults = 20;

/** @throws TableFault with all that is wrong, by line and column of the table; @throws RangeError for a wish that does not fit */
export function readTally(wish: TallyWish): Tally | Unmapped {
  const table = new Table(wish.file, wish.bytes);
  const head = headOf(table);
  const context = new ArchiveContext(".", wish.config, [wish.folder]);
  const columns = columnsOf(head.columns, table, {
    own: context.settings(resolve(wish.folder)).columns,
    find: caseColumn,
  });
  if (context.unreadable.length > 0) throw new TableFault(context.unreadable);
  const [first] = head.rows;
  if (first === undefined)
    throw new TableFault([table.fault(noCell, "there is no row below the head; write one line a pig")]);
  if (head.rows.length > mostRows)
    throw new TableFault([
      table.fault(first[0] ?? noCell, `there are ${head.rows.length} rows below; ${mostRows} is the limit`),
    ]);
  const said = [table.said, ...saidOfHead(head)];
  if (columns.unknown.length > 0)
    return {
      said,
      unknown: columns.unknown,
      faults: columns.unknown.map(({ cell, head: name }) =>
        table.fault(cell, `nobody has said what "${name}" is`),
      ),
    };
  const manner = mannerOf(columns.read);
  if (manner.unread.length > 0)
    throw new TableFault(manner.unread.map(({ cell, message }) => table.fault(cell, message)));
  const rows = new Rows(table, columns.read, manner, head);
  const visit = new VisitOf(wish, context, rows.pigs);
  const folder = wish.folderFor(rows.pigs.map(numberOf));
  const made = rows.pigs.map((pig, index) => makeCase(pig, index, { wish, table, visit, context, folder }));
  const faults = [...rows.faults, ...made.flatMap((one) => one.faults), ...twice(made, table)];
  if (faults.length > 0) throw new TableFault(firstOf(faults));
  return {
    said: [
      ...said,
      ...manner.said,
      ...(columns.skipped.length === 0 ? [] : [`${count(columns.skipped.length, "column")} skipped`]),
      ...rows.said,
    ],
    folder,
    cases: made.map(({ file, text, id, tag, line }) => ({ file, text, id, tag, line })),
    visit: visit.file(made.map(({ id }) => id)),
    unnamed: visit.namesItsCases ? visit.known?.file : undefined,
    drafts: made.flatMap(({ draft }) => draft ?? []),
  };
}

/** In the order of the table; of many the first, with the number of the others. */
export const firstOf = (faults: readonly Fault[]): Fault[] =>
  [...faults]
    .sort((a, b) => a.line - b.line || a.column - b.column)
    .slice(0, mostFaults)
    .map((fault, index) =>
      index === mostFaults - 1 && faults.length > mostFaults
        ? { ...fault, message: `${fault.message} (and ${faults.length - mostFaults} more like these)` }
        : fault,
    );

export const saidOfHead = ({ titles, isDouble, line }: Head): string[] => [
  ...(titles === 0 ? [] : [`${count(titles, "line")} of titles`]),
  ...(isDouble
    ? [`head in the lines ${line} and ${line + 1}`]
    : titles === 0
      ? []
      : [`head in line ${line}`]),
];

/** Pigs that two rows tell of. */
function twice(made: readonly Made[], table: Table): Fault[] {
  const known = new Map<string, Made>();
  return made.flatMap((one) => {
    const { entries, serial, first } = one.pig;
    const cellOf = (id: string): Cell =>
      (entries.find(({ column }) => column.to.id === id) ?? serial)?.cell ?? first;
    const group = entries.find(({ column }) => column.to.id === "pig.group")?.value;
    const names = [
      ...(one.tag === ""
        ? []
        : [{ key: `tag ${one.tag} ${String(group)}`, what: `the tag ${one.tag}`, id: "pig.tag" }]),
      { key: `case ${one.id}`, what: `the case ${one.id}`, id: "case" },
      { key: `file ${one.file}`, what: `the pig of ${one.file}`, id: "pig" },
    ];
    const again = names.flatMap(({ key, what, id }) => {
      const other = known.get(key);
      known.set(key, other ?? one);
      return other === undefined
        ? []
        : [table.fault(cellOf(id), `${what} stands in line ${other.line} already; correct one of them`)];
    });
    return again.slice(0, 1);
  });
}
