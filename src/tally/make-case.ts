/** A row of a table as the file of a case, held against the format as if it were read. */
import { resolve } from "node:path";
import type { ArchiveContext } from "../cases/files/archive-context.ts";
import { checkDocument, keyedDocument } from "../cases/files/read-file.ts";
import { type Case, type Fault, formatPath, pathsMeet, valueAt } from "../cases/index.ts";
import { buildCase } from "../cases/model/build-case.ts";
import { withDefaults } from "../cases/model/defaults.ts";
import { isKeyed, type Keyed, remove } from "../cases/model/path.ts";
import { caseColumns } from "../cases/settings/case-columns.ts";
import type { CaseFile } from "../generated/case.types.ts";
import type { Defaults } from "../generated/visit.types.ts";
import { lay, recordText, schemaHead } from "./record-text.ts";
import type { Entry, Pig } from "./rows.ts";
import type { Table } from "./table.ts";
import { ofTheDay, type VisitOf } from "./visit-of.ts";
import type { NewCase, TallyWish } from "./wish.ts";

interface Around {
  readonly wish: TallyWish;
  readonly table: Table;
  readonly visit: VisitOf;
  readonly context: ArchiveContext;
  /** In which it is written. */
  readonly folder: string;
}

export interface Made extends NewCase {
  readonly faults: readonly Fault[];
  readonly draft: Case | undefined;
  readonly pig: Pig;
}

const isNumbered = ({ serial }: Pig): boolean =>
  serial === undefined || /^\d{1,4}$/.test(String(serial.value));

/** The number of a pig in its visit. What is no number may be too long for the name of a file, too. */
export const numberOf = (pig: Pig, index: number): number =>
  pig.serial !== undefined && isNumbered(pig) ? Number(pig.serial.value) : index + 1;

export function makeCase(pig: Pig, index: number, { wish, table, visit, context, folder }: Around): Made {
  const { entries, serial, first } = pig;
  const faults: Fault[] = [];
  const at = serial?.cell ?? first;
  if (!isNumbered(pig))
    faults.push(
      table.fault(
        at,
        `${serial?.column.head}: "${String(serial?.value)}" is not the number of a pig in its visit, 1, 2, 3; what stands on the ear goes under tag`,
      ),
    );
  const number = String(numberOf(pig, index)).padStart(2, "0");
  const own = entries.find(({ column }) => column.to.id === "case");
  const id = String(own?.value ?? `${visit.id}-${number}`);
  const record: Keyed = { format: 1, case: id };
  for (const entry of entries.toSorted((a, b) => placeOf(a) - placeOf(b))) {
    const { path, value, cell, column } = entry;
    const closed = entries.find(
      (other) =>
        other !== entry && isKeyed(other.value) && other.path.every((step, depth) => path[depth] === step),
    );
    if (closed === undefined) lay(record, path, value);
    else
      faults.push(
        table.fault(
          cell,
          `${column.head}: this was not examined, as column "${closed.column.head}" says; empty one of the two cells`,
        ),
      );
  }
  const there = wish.there.get(numberOf(pig, index));
  if (there !== undefined)
    faults.push(
      table.fault(
        at,
        `${there} is there already, and no case is overwritten; number the pigs on from the last, in a column "pig"`,
      ),
    );
  const file = `${folder}/pig-${number}.yaml`;
  const read = drafted(file, record, { wish, visit, context });
  if (faults.length === 0)
    for (const fault of read.faults) {
      const entry = entries
        .filter(({ path }) => pathsMeet(path, fault.path) || pathsMeet(path, fault.intended))
        .toSorted((a, b) => b.path.length - a.path.length)[0];
      const bare = fault.message
        .replace(`${formatPath(fault.path)}: `, "")
        .replace(`${formatPath(fault.path)} `, "");
      const said = entry === undefined ? fault.message : `${entry.column.head}: ${bare}${unitHint(entry)}`;
      faults.push(table.fault(entry?.cell ?? at, said.split("\n")[0] ?? ""));
    }
  const kept = withoutDefaults(record, read.record, visit.defaults);
  return {
    file,
    text: `${schemaHead(file, "case")}${recordText(kept)}`,
    id,
    tag: String(entries.find(({ column }) => column.to.id === "pig.tag")?.value ?? ""),
    line: table.line(first.start),
    faults,
    draft: read.draft,
    pig,
  };
}

/** The order of a case. */
const places = new Map(caseColumns.map(({ id }, at) => [id, at]));
const placeOf = ({ column }: Entry): number => places.get(column.to.id) ?? places.size;

const unitHint = ({ column, value }: Entry): string =>
  column.to.kind === "quantity" && /^-?\d+(?:\.\d+)?$/.test(String(value))
    ? ` Or write the unit into the head: ${column.head} (${column.to.unit}).`
    : "";

/** The case as it will be read. */
function drafted(file: string, record: Keyed, { wish, visit, context }: Omit<Around, "table" | "folder">) {
  const read = keyedDocument(file, { ok: true, text: recordText(record) });
  if (!read.ok) return { faults: read.faults, record: {} as CaseFile, draft: undefined };
  const { placed, record: valid, raw } = checkDocument("case", file, read.result);
  const settings = context.settings(resolve(wish.folder));
  const draft = buildCase({
    file,
    document: read.result.document,
    record: valid as unknown as CaseFile,
    raw,
    faults: placed,
    settings,
    visit: visit.known,
    farm: context.farm(resolve(wish.folder)),
  });
  return { faults: placed, record: valid as unknown as CaseFile, draft };
}

/** Leaves out what the case inherits all the same. */
function withoutDefaults(record: Keyed, valid: CaseFile, defaults: Defaults): Keyed {
  const alike = ofTheDay
    .map((id) => id.split("."))
    .filter((path) => {
      const said = valueAt(defaults, path);
      return said !== undefined && JSON.stringify(said) === JSON.stringify(valueAt(record, path));
    });
  const shorter = structuredClone(valid);
  for (const path of alike) remove(shorter, path);
  const { record: completed } = withDefaults({ record: shorter, raw: shorter }, [], defaults);
  const kept = structuredClone(record);
  for (const path of alike)
    if (JSON.stringify(valueAt(completed, path)) === JSON.stringify(valueAt(record, path))) {
      remove(kept, path);
      for (let depth = path.length - 1; depth > 0; depth--) {
        const above = valueAt(kept, path.slice(0, depth));
        if (isKeyed(above) && Object.keys(above).length === 0) remove(kept, path.slice(0, depth));
      }
    }
  return kept;
}
