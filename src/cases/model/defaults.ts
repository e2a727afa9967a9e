/** What a case inherits from its visit: facts of the day that nobody has to repeat for each pig. */
import type { CaseFile } from "../../generated/case.types.ts";
import type { Defaults } from "../../generated/visit.types.ts";
import type { Fault } from "../faults/fault.ts";
import type { VisitContext } from "./model.ts";
import { isKeyed, type Keyed, type Path, pathsMeet, valueAt } from "./path.ts";
import { writtenPath } from "./written-path.ts";

/** A record as its visit completes it. */
export interface Completed {
  readonly record: CaseFile;
  readonly raw: object;
  /** Where the values that it inherited stand in the case. */
  readonly inherited: readonly Path[];
}

/**
 * Puts the defaults of the visit where a case says nothing itself; what was read stays as it is.
 * @param read the record, and the same with its blanks
 * @param faults what cannot be read of the case: it is not blank for that
 */
export function withDefaults(
  { record, raw }: Pick<Completed, "record" | "raw">,
  faults: readonly Pick<Fault, "intended">[],
  defaults: Defaults = {},
): Completed {
  const inherited = leaves(defaults).filter(
    ([path]) =>
      inherits(record, path, defaults) &&
      !faults.some(({ intended }) => [path, ...decisive(path)].some((one) => pathsMeet(one, intended))),
  );
  if (inherited.length === 0) return { record, raw, inherited: [] };
  const completed = <Of extends object>(of: Of): Of =>
    inherited.reduce<Of>((whole, [path, value]) => laidInto(whole, path, value) as Of, of);
  return { record: completed(record), raw: completed(raw), inherited: inherited.map(([path]) => path) };
}

type Leaf = readonly [path: Path, value: unknown];

/** A list is one value. */
const leaves = (keyed: object, path: Path = []): Leaf[] =>
  Object.entries(keyed).flatMap(([key, value]) =>
    isKeyed(value) ? leaves(value, [...path, key]) : [[[...path, key], value] as const],
  );

/** Facts with which a pig says that a default is not of it: another age, another death. */
const decisive = ([group, key]: Path): readonly Path[] =>
  group === "death"
    ? [["death", "manner"]]
    : group === "pig" && key !== "group"
      ? [
          ["pig", "age"],
          ["pig", "class"],
        ]
      : [];

function inherits(record: CaseFile, path: Path, { death }: Defaults): boolean {
  if (valueAt(record, path) !== undefined) return false;
  const [group, key] = path;
  const manner = record.death?.manner;
  if (group === "death" && manner !== undefined)
    return death?.manner === undefined ? !isFound(manner) : manner === death.manner;
  if (group === "opened" && key === "at") return record.closed === undefined;
  if (group === "respiratory") return isObserved(valueAt(record, path.slice(0, -1)));
  return decisive(path).every((one) => valueAt(record, one) === undefined);
}

const isFound = (manner: string): boolean => manner === "found-dead" || manner === "born-dead";

/** Whether something was said of the conchae: the level alone, which the visit tells, is no look at them. */
function isObserved(turbinates: unknown): boolean {
  if (!isKeyed(turbinates)) return turbinates === "normal";
  if ("not_examined" in turbinates || "not_assessable" in turbinates) return false;
  const { note: _note, photos: _photos, ...observed } = turbinates;
  return leaves(observed).length > 0;
}

/** A copy with a value at a path; the word for a normal organ becomes the key for it. */
export function laidInto(into: unknown, [step, ...rest]: Path, value: unknown): unknown {
  if (step === undefined) return value;
  const keyed: Keyed = isKeyed(into) ? into : into === "normal" ? { state: "normal" } : {};
  return { ...keyed, [step]: laidInto(keyed[step], rest, value) };
}

/** A file in which something of a record may stand. */
type Written = Parameters<typeof writtenPath>[0];

/**
 * Where something of a record stands: in its own file, or among the defaults of its visit.
 * @param path of the record
 */
export function standsIn<Of extends Written>(
  subject: Of & { readonly visit?: VisitContext | undefined; readonly inherited?: readonly Path[] },
  path: Path,
): { readonly subject: Of | VisitContext; readonly path: Path } {
  const { visit, inherited = [] } = subject;
  const isInherited = inherited.some((one) => one.every((step, at) => path[at] === step));
  return visit !== undefined && isInherited
    ? { subject: visit, path: ["defaults", ...path] }
    : { subject, path: writtenPath(subject, path) };
}
