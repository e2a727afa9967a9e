/** Checks a document against its schema and keeps the part of it that is valid. */
import { caseFits, farmFits, settingsFits, visitFits } from "../generated/fits.js";
import { errorsOf } from "./full-validator.ts";
import { type Path, valueAt } from "./path.ts";
import { type SchemaFault, schemaFaults } from "./schema-faults.ts";

/** Nearly all files fit, so this is asked first; what is wrong with the others is told by what is loaded then. */
const fits = { case: caseFits, visit: visitFits, farm: farmFits, settings: settingsFits } as const;

export type FileKind = keyof typeof fits | "scale";

/** In a scale file `value:` of a worked example may be null: no score. */
const mayBeNull: Partial<Record<FileKind, string>> = { scale: "value" };

export interface Validated {
  readonly faults: readonly SchemaFault[];
  /** The document without the values at fault, blanks kept as null. */
  readonly raw: Record<string, unknown>;
  /** The same without blanks; fits the schema but for keys missing at the top. */
  readonly record: Record<string, unknown>;
}

/**
 * Validates one document. Values at fault are taken out (a whole list with a fault in one entry, so that positions
 * stay true), which lets the rules work on the rest.
 */
export function validate(kind: FileKind, value: Record<string, unknown>): Validated {
  const kept = mayBeNull[kind];
  const faults = faultsOf(kind, value, kept);
  if (faults.length === 0) return { faults, raw: value, record: withoutBlanks(value, kept) };
  const raw = structuredClone(value);
  for (const fault of faults) remove(raw, cut(fault));
  // What was taken out may now be missing; in the end whole keys of the top are given up.
  for (let round = 0; round < 5; round++) {
    const rest = faultsOf(kind, raw, kept).filter((fault) => cut(fault).length > 0);
    if (rest.length === 0) break;
    for (const fault of rest) remove(raw, round < 3 ? cut(fault) : fault.path.slice(0, 1));
  }
  return { faults, raw, record: withoutBlanks(raw, kept) };
}

/** Faults of the document as if its blanks were not there, and keys that do not exist even if they are blank. */
function faultsOf(kind: FileKind, value: Record<string, unknown>, kept: string | undefined): SchemaFault[] {
  const plain = withoutBlanks(value, kept);
  const errors = kind !== "scale" && fits[kind](plain) ? [] : errorsOf(kind, plain);
  const unknown = hasBlanks(value) ? errorsOf(kind, value) : [];
  const blank = unknown.filter(
    ({ keyword, params, data }) =>
      keyword === "additionalProperties" &&
      (data as Record<string, unknown>)[String(params.additionalProperty)] === null,
  );
  return schemaFaults([...errors, ...blank], value);
}

/** What to take out for a fault: the value, the parent of a missing key, never a single entry of a list. */
function cut(fault: SchemaFault): Path {
  const path = fault.kind === "missing-key" ? fault.path.slice(0, -1) : fault.path;
  const list = path.findIndex((step) => typeof step === "number");
  return list < 0 ? path : path.slice(0, list);
}

function remove(target: Record<string, unknown>, path: Path): void {
  const last = path.at(-1);
  const parent = valueAt(target, path.slice(0, -1));
  if (last !== undefined && typeof parent === "object" && parent !== null)
    delete (parent as Record<string | number, unknown>)[last];
}

function hasBlanks(value: unknown): boolean {
  if (typeof value !== "object") return false;
  return value === null || Object.values(value).some(hasBlanks);
}

/** A copy in which keys without a value are left out: blank is an omission, everywhere but under the key `but`. */
function withoutBlanks(value: Record<string, unknown>, but?: string): Record<string, unknown>;
function withoutBlanks(value: unknown, but?: string): unknown;
function withoutBlanks(value: unknown, but?: string): unknown {
  if (Array.isArray(value)) return value.map((item) => withoutBlanks(item, but));
  if (typeof value !== "object" || value === null) return value;
  const kept = Object.entries(value).filter(([key, item]) => item !== null || key === but);
  return Object.fromEntries(kept.map(([key, item]) => [key, withoutBlanks(item, but)]));
}
