/** The empty table: a head in the words that import understands, and one line a pig. */

import { unknownName, valueAt } from "../cases/index.ts";
import { type CaseColumn, caseColumn, caseColumns, columnNames } from "../cases/settings/case-columns.ts";

export interface EmptyTableWish {
  /** Numbers of the pigs, a line each. */
  readonly pigs: readonly number[];
  /** Names of columns, organs or systems beside pig and tag; the usual tally when left out. */
  readonly columns?: readonly string[];
  /** What the visit says for its cases already; no column asks for it again. */
  readonly defaults?: object | undefined;
}

export interface EmptyTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | null)[])[];
}

/** @throws RangeError when there is no column of a name */
export function emptyTable({ pigs, columns, defaults = {} }: EmptyTableWish): EmptyTable {
  const wanted = columns?.flatMap(columnsNamed) ?? caseColumns.filter(({ usual }) => usual);
  const asked = ["pig", "pig.tag"].flatMap((id) => caseColumn(id) ?? []).concat(wanted);
  const shown = asked.filter(
    ({ id, path, kind }, at) =>
      asked.findIndex((other) => other.id === id) === at &&
      (kind === "serial" || valueAt(defaults, path) === undefined),
  );
  return {
    head: shown.map(headed),
    rows: pigs.map((pig) =>
      shown.map(({ kind }) => (kind === "serial" ? String(pig).padStart(2, "0") : null)),
    ),
  };
}

/** Its unit stands in the head, so that cells hold numbers alone. */
const headed = ({ name, unit }: CaseColumn): string => (unit === undefined ? name : `${name} (${unit})`);

/** One column by its name or path; or all observations below a path: of an organ, of a part, of a system. */
function columnsNamed(name: string): readonly CaseColumn[] {
  const bare = name.trim().toLowerCase().replaceAll(" ", "_");
  const below = caseColumns.filter(
    ({ id, kind }) =>
      (id.startsWith(`${bare}.`) || id.includes(`.${bare}.`)) &&
      kind !== "state" &&
      !/\.(?:grades\.[^.]+|weight|note)$/.test(id),
  );
  const usual = below.filter((column) => column.usual);
  const one = caseColumn(name);
  if (one !== undefined && (one.kind !== "state" || below.length === 0)) return [one];
  if (below.length > 0) return usual.length > 0 ? usual : below;
  throw new RangeError(unknownName(name, columnNames, "column"));
}
