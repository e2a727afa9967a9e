/** Checks a document against its schema and keeps the part of it that is valid. */
import type { ErrorObject } from "ajv";
import { caseFits, farmFits, resultsFits, settingsFits, visitFits } from "../../generated/fits.js";
import { withoutBlanks } from "../model/blanks.ts";
import { type Path, put, remove, valueAt } from "../model/path.ts";
import { errorsOf } from "./full-validator.ts";
import { type SchemaFault, schemaFaults } from "./schema-faults.ts";

/**
 * Nearly all files fit, with keys left blank or without, so this is asked first; what is wrong with the others is told by
 * what is loaded then. A blank under a free name, such as that of a scale, is left to it as well.
 */
const fits = {
  case: caseFits,
  visit: visitFits,
  farm: farmFits,
  results: resultsFits,
  settings: settingsFits,
} as const;

export type FileKind = keyof typeof fits | "scale";

/** In a scale file `value:` of a worked example may be null: no score. */
const mayBeNull: Partial<Record<FileKind, string>> = { scale: "value" };

export interface Validated {
  readonly faults: readonly SchemaFault[];
  /** The document without the values at fault, blanks kept as null. */
  readonly raw: Record<string, unknown>;
  /**
   * The same without blanks; fits the schema but for keys missing at the top. What an entry of a list must have and
   * lacks is empty there, so that its position stays true.
   */
  readonly record: Record<string, unknown>;
}

/**
 * Validates one document. Only values at fault are taken out, which lets the rules work on the rest; the entries of a
 * list keep their places. An entry that is no value of its list at all goes whole (see writtenPath). Of a scale, which
 * is used whole or not at all, the list goes.
 */
export function validate(kind: FileKind, value: Record<string, unknown>): Validated {
  const kept = mayBeNull[kind];
  const plain = withoutBlanks(value, kept);
  const faults = faultsIn(kind, value, plain);
  if (faults.length === 0) return { faults, raw: value, record: plain };
  const numbered = faults.filter(({ path }) => isSampleId(path) && Number.isInteger(valueAt(value, path)));
  if (numbered.length > 0) {
    const labelled = structuredClone(value);
    for (const { path } of numbered) put(labelled, path, String(valueAt(value, path)));
    return validate(kind, labelled);
  }
  const { raw, lacking } = validPart(kind, value, faults);
  const record = withoutBlanks(structuredClone(raw), kept);
  for (const path of lacking) put(record, path, path.at(-1) === "grades" ? {} : "");
  return { faults, raw, record };
}

/** A sample numbered 1 is "1" on its label, as an ear tag is. */
const isSampleId = (path: Path): boolean =>
  /^(samples\.\d+\.id|parcels\.\d+\.samples\.\d+|entries\.\d+\.(sample|pool\.\d+|pair\.(first|second)))$/.test(
    path.join("."),
  );

/** The document without its values at fault, and the keys that entries of its lists then lack. */
function validPart(
  kind: FileKind,
  value: Record<string, unknown>,
  faults: readonly SchemaFault[],
): { raw: Record<string, unknown>; lacking: readonly Path[] } {
  const cut = kind === "scale" ? cutList : cutValue;
  const raw = structuredClone(value);
  const lost = new Map<string, Path>();
  let rest: readonly SchemaFault[] = faults;
  // What was taken out may now be missing; in the end whole keys of the top are given up.
  for (let round = 0; rest.length > 0 && round < 7; round++) {
    for (const fault of rest) {
      const path = round < 5 ? cut(fault) : fault.path.slice(0, 1);
      if (typeof path.at(-1) !== "number") remove(raw, path);
      else if (isEmpty(valueAt(raw, path))) lost.set(JSON.stringify(path), path);
      else put(raw, path, {});
    }
    rest = faultsOf(kind, raw, mayBeNull[kind]).filter(
      (fault) => cut(fault).length > 0 && !lost.has(JSON.stringify(fault.path)),
    );
  }
  for (const path of [...lost.values()].reverse().sort(backwards)) leaveOut(raw, path);
  const lacking = faultsOf(kind, raw, mayBeNull[kind]).filter(isLackingEntry);
  return { raw, lacking: lacking.map(({ path }) => path) };
}

/**
 * Faults of the document as if its blanks were not there, and keys that do not exist even if they are blank.
 * @param kept the key that may be null
 */
const faultsOf = (kind: FileKind, value: Record<string, unknown>, kept?: string): SchemaFault[] =>
  faultsIn(kind, value, withoutBlanks(value, kept));

/** @param plain the document without its blanks; the document itself where it has none */
function faultsIn(
  kind: FileKind,
  value: Record<string, unknown>,
  plain: Record<string, unknown>,
): SchemaFault[] {
  if (kind !== "scale" && fits[kind](value)) return [];
  const errors = errorsOf(kind, plain);
  const unknown = plain === value ? [] : errorsOf(kind, value);
  const blank = unknown.filter(isBlankUnknown);
  return schemaFaults([...errors, ...blank], value);
}

/** A key that does not exist and is left blank; of a document with its blanks the other errors are about them. */
export const isBlankUnknown = ({ keyword, params, data }: ErrorObject): boolean =>
  keyword === "additionalProperties" &&
  (data as Record<string, unknown>)[String(params.additionalProperty)] === null;

/** A key that an entry of a list must have. */
const isLackingEntry = ({ kind, path }: SchemaFault): boolean =>
  kind === "missing-key" && typeof path.at(-2) === "number";

/** What to take out for a fault: the value, the parent of a missing key; nothing for an entry that lacks a key. */
function cutValue(fault: SchemaFault): Path {
  if (isLackingEntry(fault)) return [];
  return fault.kind === "missing-key" ? fault.path.slice(0, -1) : fault.path;
}

/** The same, but never inside a list. */
function cutList(fault: SchemaFault): Path {
  const path = fault.kind === "missing-key" ? fault.path.slice(0, -1) : fault.path;
  const list = path.findIndex((step) => typeof step === "number");
  return list < 0 ? path : path.slice(0, list);
}

const isEmpty = (value: unknown): boolean =>
  typeof value === "object" && value !== null && Object.keys(value).length === 0;

/** Takes an entry out of its list, and the list with its last entry. */
function leaveOut(target: Record<string, unknown>, path: Path): void {
  const list = valueAt(target, path.slice(0, -1));
  if (!Array.isArray(list)) return;
  list.splice(Number(path.at(-1)), 1);
  if (list.length === 0) remove(target, path.slice(0, -1));
}

/** Later entries first, and what lies inside an entry before the entry. */
function backwards(a: Path, b: Path): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const [one, other] = [a[i], b[i]];
    if (typeof one === "number" && typeof other === "number" && one !== other) return other - one;
  }
  return b.length - a.length;
}
