/** What each column of a table means: by its name, or as the settings say. */

import type { Settings } from "../cases/index.ts";
import { formatPath } from "../cases/index.ts";
import { type CaseColumn, skipped } from "../cases/settings/case-columns.ts";
import type { HeadColumn } from "./head.ts";
import { type Table, TableFault } from "./table.ts";

export interface ReadColumn extends HeadColumn {
  readonly to: CaseColumn;
  readonly unit: string | undefined;
  readonly dates: "day-first" | "month-first" | undefined;
  readonly words: ReadonlyMap<string, string | number>;
}

export interface Columns {
  readonly read: readonly ReadColumn[];
  readonly skipped: readonly HeadColumn[];
  /** Of which nobody said what they are. */
  readonly unknown: readonly HeadColumn[];
}

/** `weight (kg)` is weight, and its numbers are kg. */
function withUnit(head: string): { readonly name: string; readonly unit: string | undefined } {
  const open = Math.max(head.lastIndexOf("("), head.lastIndexOf("["));
  const unit = /[)\]]$/.test(head) && open > 0 ? head.slice(open + 1, -1).trim() : "";
  return unit === "" ? { name: head, unit: undefined } : { name: head.slice(0, open), unit };
}

const bareHead = (head: string): string => head.toLowerCase().replaceAll(/\s+/g, " ").trim();

/** What the settings say of columns, and which column of the format has a name. */
export interface Known {
  readonly own: Settings["columns"];
  find(name: string): CaseColumn | undefined;
}

/** @throws TableFault when two columns hold the same */
export function columnsOf(heads: readonly HeadColumn[], table: Table, known: Known): Columns {
  const own = new Map(Object.entries(known.own).map(([head, to]) => [bareHead(head), to]));
  const columns = heads.map((head) => ({ ...head, ...meaning(head.head, own, known.find) }));
  const read = columns.filter((one): one is ReadColumn => one.to !== undefined && one.to !== skipped);
  const byPath = new Map<string, ReadColumn>();
  const twice = read.flatMap((one) => {
    const other = byPath.get(one.to.id);
    byPath.set(one.to.id, other ?? one);
    return other === undefined
      ? []
      : [
          table.fault(
            one.cell,
            `"${one.head}" and "${other.head}" are both ${formatPath(one.to.path)}; take one of the columns out`,
          ),
        ];
  });
  if (twice.length > 0) throw new TableFault(twice);
  return {
    read,
    skipped: columns.filter(({ to }) => to === skipped),
    unknown: columns.filter(({ to }) => to === undefined),
  };
}

type Meaning = Pick<ReadColumn, "unit" | "dates" | "words"> & {
  readonly to: CaseColumn | "skip" | undefined;
};

function meaning(
  head: string,
  own: ReadonlyMap<string, Settings["columns"][string]>,
  find: Known["find"],
): Meaning {
  const said = own.get(bareHead(head));
  const { name, unit } = withUnit(head);
  const plain = { unit, dates: undefined, words: new Map<string, string | number>() };
  if (said === undefined) return { ...plain, to: find(head) ?? find(name) };
  if (typeof said === "string") return { ...plain, to: said === skipped ? skipped : find(said) };
  return {
    to: said.to === skipped ? skipped : find(said.to),
    unit: said.unit ?? unit,
    dates: said.dates,
    words: new Map(Object.entries(said.words ?? {}).map(([word, is]) => [bareHead(word), is])),
  };
}

/** What the settings put for a word of a cell. */
export const wordFor = ({ words }: ReadColumn, text: string): string | number | undefined =>
  words.get(bareHead(text));
