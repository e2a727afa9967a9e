/**
 * Turns the errors of the compiled schemas into faults for somebody who types case files. A schema reports every
 * alternative that did not match; a person made one mistake and is told of one.
 */
import type { ErrorObject } from "ajv";
import { grouped } from "../../words/grouped.ts";
import { listing } from "../../words/listing.ts";
import { formatPath, type Path, valueAt } from "../model/path.ts";
import { longText, shown } from "./shown.ts";
import { unknownKey } from "./unknown-key.ts";
import { valueMessage } from "./value-message.ts";

/** A value that does not fit the schema. */
export interface SchemaFault {
  readonly path: Path;
  /** The path that was meant, where a mistyped or misplaced key can be recognised; else the same as `path`. */
  readonly intended: Path;
  readonly message: string;
  /** Whether the key itself is at fault, or its value. */
  readonly points: "key" | "value";
  readonly kind: "unknown-key" | "missing-key" | "out-of-range" | "wrong-value";
}

/** The errors at one path. */
interface Group {
  readonly path: Path;
  readonly errors: ErrorObject[];
  /** Whether something inside the value is at fault too. */
  below: boolean;
}

/**
 * Faults of one document, each mistake once, in the order of its schema.
 * @param errors all errors of the validator
 * @param document the document that was validated, with or without the keys that are left blank
 */
export function schemaFaults(errors: readonly ErrorObject[], document: unknown): SchemaFault[] {
  return [...groups(errors, document)].flatMap((group) => {
    const unknown = unknownKeys(group, document);
    const missing = missingKeys(group, document).filter(
      (fault) => !unknown.some((other) => same(other.intended, fault.path)),
    );
    const value = unknown.length + missing.length > 0 ? [] : valueFault(group, document);
    return [...unknown, ...missing, ...value];
  });
}

/** Paths are told apart by their steps; as text, a key with a point in it would look like two keys. */
const identity = (path: Path): string => JSON.stringify(path);
/** A path as a person reads it, with keys of unreasonable length cut. */
export const named = (path: Path): string =>
  formatPath(
    path.map((step) =>
      typeof step === "string" && step.length > longText ? `${step.slice(0, longText - 3)}…` : step,
    ),
  );
const same = (a: Path, b: Path): boolean => identity(a) === identity(b);

function groups(errors: readonly ErrorObject[], document: unknown): Iterable<Group> {
  const byPath = new Map<string, Group>();
  for (const error of errors) {
    const path = pointerPath(error.instancePath, document);
    const key = identity(path);
    const group = byPath.get(key) ?? { path, errors: [], below: false };
    group.errors.push(error);
    byPath.set(key, group);
  }
  for (const { path } of byPath.values())
    for (let length = path.length - 1; length >= 0; length--) {
      const above = byPath.get(identity(path.slice(0, length)));
      if (above !== undefined) above.below = true;
    }
  return byPath.values();
}

function unknownKeys({ path, errors }: Group, document: unknown): SchemaFault[] {
  const keys = new Map<string, ErrorObject>();
  for (const error of errors)
    if (error.keyword === "additionalProperties") keys.set(String(error.params.additionalProperty), error);
  const advised = [...keys].map(([key, error]) => {
    return { key, ...unknownKey(key, path, error.parentSchema, document) };
  });
  const apart = ({ key, help, isAlike }: (typeof advised)[number]): string => (isAlike === true ? help : key);
  return [...grouped(advised, apart).values()].map(([first, ...others]) => {
    const at = [...path, first.key];
    const several = listing([first, ...others].map(({ key }) => key));
    const what =
      others.length === 0 ? `${named(at)}: no such key` : `${named(path)}: no such keys: ${several}`;
    return {
      path: at,
      intended: first.intended ?? at,
      message: `${what}. ${first.help}`,
      points: "key",
      kind: "unknown-key",
    };
  });
}

function missingKeys({ path, errors }: Group, document: unknown): SchemaFault[] {
  const keys = new Map<string, ErrorObject>();
  for (const error of errors)
    if (error.keyword === "required") keys.set(String(error.params.missingProperty), error);
  return [...keys].map(([key, error]) => {
    const at = [...path, key];
    const state = valueAt(document, at) === null ? "is left blank" : "is missing";
    return {
      path: at,
      intended: at,
      message: `${named(at)} ${state}. ${keyHint(error, key)}`,
      points: "key",
      kind: "missing-key",
    };
  });
}

/** Keywords that also fail for an alternative that was not meant. */
const alternatives = new Set(["anyOf", "type", "const", "enum"]);

function valueFault({ path, errors, below }: Group, document: unknown): SchemaFault[] {
  const value = valueAt(document, path);
  const structured = typeof value === "object" && value !== null;
  const serious = errors.filter(({ keyword }) => !alternatives.has(keyword));
  if (structured && below && serious.length === 0) return [];
  const name = named(path) || "the file";
  const fault = (message: string, kind: SchemaFault["kind"]): SchemaFault[] => [
    { path, intended: path, message: `${name}: ${message}`, points: "value", kind },
  ];
  const range = errors.find(({ keyword }) => /^(exclusiveM|m)(ini|axi)mum$/.test(keyword));
  if (range !== undefined)
    return fault(`${shown(value)} is out of range; ${rangeWords(range)}.`, "out-of-range");
  // Nobody counts what is countless.
  const instead =
    path.at(-1) === "number" && typeof value === "string" && !/\d/.test(value)
      ? " If nobody counted, leave it out and write severity: marked."
      : "";
  return fault(`${valueMessage(value, errors)}${instead}`, "wrong-value");
}

function keyHint({ parentSchema }: ErrorObject, key: string): string {
  if (key === "process") return "Write what happened to the tissue, such as process: enlargement.";
  const { description, examples, const: only } = parentSchema?.properties?.[key] ?? {};
  if (only !== undefined) return `Write ${key}: ${only}.`;
  if (typeof description !== "string") return "Write it.";
  const example: unknown = Array.isArray(examples) ? examples[0] : undefined;
  return `Write it: ${description}${typeof example === "string" ? `, such as ${example}` : ""}.`;
}

function rangeWords({ parentSchema }: ErrorObject): string {
  const { minimum, maximum, exclusiveMinimum, exclusiveMaximum } = parentSchema ?? {};
  if (exclusiveMinimum !== undefined && exclusiveMaximum !== undefined)
    return `write a number above ${exclusiveMinimum} and below ${exclusiveMaximum}`;
  if (minimum !== undefined && maximum !== undefined) return `write ${minimum} to ${maximum}`;
  const limits = [
    ...(minimum === undefined ? [] : [`${minimum} or more`]),
    ...(exclusiveMinimum === undefined ? [] : [`more than ${exclusiveMinimum}`]),
    ...(maximum === undefined ? [] : [`${maximum} or less`]),
    ...(exclusiveMaximum === undefined ? [] : [`less than ${exclusiveMaximum}`]),
  ];
  return `write ${limits.join(" and ")}`;
}

/** Turns a JSON pointer into a path; digits are list positions only where the document has a list. */
export function pointerPath(pointer: string, document: unknown): Path {
  const path: (string | number)[] = [];
  let value: unknown = document;
  for (const raw of pointer.split("/").slice(1)) {
    const text = raw.replaceAll("~1", "/").replaceAll("~0", "~");
    const step = Array.isArray(value) ? Number(text) : text;
    path.push(step);
    value = valueAt(value, [step]);
  }
  return path;
}
