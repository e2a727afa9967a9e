/** Records of two versions of an archive, each with what it has become: changed, moved, added or taken out. */
import { decode } from "../cases/files/read-text.ts";
import { isKeyed, type Keyed } from "../cases/model/path.ts";
import { parseYaml } from "../cases/yaml/parse-yaml.ts";
import { type Change, changesOf, type RecordKind } from "./changes.ts";

export interface RecordVersion {
  readonly kind: RecordKind;
  readonly id: string;
  /** As shown to people. */
  readonly file: string;
  readonly record: Keyed;
}

/** A file of one version: a record, no record of ours, or why it cannot be read. */
export type ReadVersion =
  | { readonly version: RecordVersion }
  | { readonly other: true }
  | { readonly fault: { readonly line: number; readonly column: number; readonly message: string } };

const kinds: readonly RecordKind[] = ["results", "case", "visit", "farm"];

export function readVersion(file: string, bytes: Uint8Array): ReadVersion {
  const decoded = decode(bytes);
  if (!decoded.ok) {
    const [{ message, place } = { message: "it cannot be read", place: undefined }] = decoded.faults;
    return { fault: { line: place?.line ?? 0, column: place?.column ?? 0, message } };
  }
  const parsed = parseYaml(decoded.text);
  if (!parsed.ok) {
    const [fault] = parsed.faults;
    const { line, column } = fault?.place ?? { line: 0, column: 0 };
    return { fault: { line, column, message: fault?.message ?? "it cannot be read" } };
  }
  const { value } = parsed.document;
  const kind = isKeyed(value) ? kinds.find((key) => Object.hasOwn(value, key)) : undefined;
  if (!isKeyed(value) || kind === undefined) return { other: true };
  return { version: { kind, id: String(value[kind] ?? file), file, record: value } };
}

export interface RecordChange {
  readonly change: "added" | "removed" | "changed";
  readonly kind: RecordKind;
  readonly id: string;
  readonly file: string;
  /** Where it lay, if that was elsewhere. */
  readonly movedFrom: string | undefined;
  /** The record as it is; as it was, where it was taken out. */
  readonly record: Keyed;
  /** None of one that was added or taken out whole, nor of one in which only comments or its layout changed. */
  readonly changes: readonly Change[];
}

/** @returns by file, as it is or was */
export function recordChanges(
  before: readonly RecordVersion[],
  after: readonly RecordVersion[],
): RecordChange[] {
  const found: RecordChange[] = [];
  let gone = before;
  let come = after;
  const match = (key: (version: RecordVersion) => string): void => {
    const known = new Map(gone.map((version) => [key(version), version]));
    const met = new Set<RecordVersion>();
    come = come.filter((now) => {
      const was = known.get(key(now));
      if (was === undefined || met.has(was)) return true;
      met.add(was);
      found.push(changed(was, now));
      return false;
    });
    gone = gone.filter((was) => !met.has(was));
  };
  match(({ kind, id, file }) => JSON.stringify([kind, id, file]));
  match(({ kind, id }) => JSON.stringify([kind, id]));
  match(({ kind, file }) => JSON.stringify([kind, file]));
  const whole = (change: "added" | "removed") => (version: RecordVersion) => ({
    ...version,
    change,
    movedFrom: undefined,
    changes: [],
  });
  return [...found, ...come.map(whole("added")), ...gone.map(whole("removed"))].sort((a, b) =>
    a.file < b.file ? -1 : a.file > b.file ? 1 : 0,
  );
}

const changed = (was: RecordVersion, now: RecordVersion): RecordChange => ({
  ...now,
  change: "changed",
  movedFrom: was.file === now.file ? undefined : was.file,
  changes: changesOf(now.kind, was.record, now.record),
});
