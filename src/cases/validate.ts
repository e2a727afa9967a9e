/** Checks a document against its schema and keeps the part of it that is valid. */
import type { Validator } from "../generated/validators.cjs";
import { caseFile, farmFile, settingsFile, visitFile } from "../generated/validators.cjs";
import { withoutBlanks } from "./blanks.ts";
import type { Path } from "./path.ts";
import { type SchemaFault, schemaFaults } from "./schema-faults.ts";

const validators = { case: caseFile, visit: visitFile, farm: farmFile, settings: settingsFile } as const;

export type FileKind = keyof typeof validators;

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
  const validator: Validator = validators[kind];
  const whole = withoutBlanks(value);
  if (validator(whole)) return { faults: [], raw: value, record: whole };
  const faults = schemaFaults(validator.errors ?? [], whole);
  const raw = structuredClone(value);
  for (const fault of faults) remove(raw, cut(fault));
  if (!validator(withoutBlanks(raw)))
    for (const fault of schemaFaults(validator.errors ?? [], raw))
      remove(raw, fault.path.slice(0, cut(fault).length === 0 ? 0 : 1));
  return { faults, raw, record: withoutBlanks(raw) };
}

/** What to take out for a fault: the value, the parent of a missing key, never a single entry of a list. */
function cut(fault: SchemaFault): Path {
  const path = fault.kind === "missing-key" ? fault.path.slice(0, -1) : fault.path;
  const list = path.findIndex((step) => typeof step === "number");
  return list < 0 ? path : path.slice(0, list);
}

function remove(target: Record<string, unknown>, path: Path): void {
  const last = path.at(-1);
  if (last === undefined) return;
  let current: unknown = target;
  for (const step of path.slice(0, -1)) {
    if (typeof current !== "object" || current === null || !Object.hasOwn(current, step)) return;
    current = (current as Record<string | number, unknown>)[step];
  }
  if (typeof current === "object" && current !== null)
    delete (current as Record<string | number, unknown>)[last];
}
