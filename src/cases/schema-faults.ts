/**
 * Turns the errors of the compiled schemas into sentences for somebody who types case files, and narrows
 * alternatives (an organ is a word, a list or an entry) to the one that was meant.
 */
import type { ErrorObject } from "ajv";
import { hints } from "../generated/hints.ts";
import { listing } from "../words/listing.ts";
import { nearest } from "../words/nearest.ts";
import { formatPath, type Path, valueAt } from "./path.ts";

/** A value that does not fit the schema. */
export interface SchemaFault {
  readonly path: Path;
  readonly message: string;
  /** Whether the key itself is at fault, or its value. */
  readonly points: "key" | "value";
  readonly kind: "unknown-key" | "missing-key" | "out-of-range" | "wrong-value";
}

/** Sentences for the errors of one document, each fault once. */
export function schemaFaults(errors: readonly ErrorObject[], document: unknown): SchemaFault[] {
  const located = errors.map((error) => ({ error, path: pointerPath(error.instancePath, document) }));
  const faults: SchemaFault[] = [];
  const seen = new Set<string>();
  for (const { error, path } of located) {
    const here = located
      .filter((other) => formatPath(other.path) === formatPath(path))
      .map((other) => other.error);
    const below = located.some((other) => isBelow(other.path, path));
    if (isNoise(error) && (below || here.some((other) => !isNoise(other)))) continue;
    for (const fault of describe(error, path, here, document)) {
      const key = `${formatPath(fault.path)} ${fault.kind}`;
      if (!seen.has(key)) faults.push(fault);
      seen.add(key);
    }
  }
  return faults;
}

/** Errors that only say that one of several alternatives was not meant. */
const isNoise = (error: ErrorObject): boolean =>
  error.keyword === "anyOf" || error.keyword === "type" || error.keyword === "const";

const isBelow = (path: Path, parent: Path): boolean =>
  path.length > parent.length && formatPath(path.slice(0, parent.length)) === formatPath(parent);

function describe(
  error: ErrorObject,
  path: Path,
  here: readonly ErrorObject[],
  document: unknown,
): SchemaFault[] {
  const name = formatPath(path) || "the file";
  const written = shown(valueAt(document, path));
  const fault = (message: string, rest: Partial<SchemaFault> = {}): SchemaFault[] => [
    { path, message: `${name}: ${message}`, points: "value", kind: "wrong-value", ...rest },
  ];
  switch (error.keyword) {
    case "additionalProperties": {
      const key = String(error.params.additionalProperty);
      const known = Object.keys((error.parentSchema?.properties as object | undefined) ?? {});
      const guess = nearest(key, known);
      const help = guess === undefined ? `Known here: ${listing(known, "or")}.` : `Did you mean ${guess}?`;
      const at = [...path, key];
      return [
        { path: at, message: `${formatPath(at)}: no such key. ${help}`, points: "key", kind: "unknown-key" },
      ];
    }
    case "required": {
      const key = String(error.params.missingProperty);
      const at = [...path, key];
      return [
        {
          path: at,
          message: `${formatPath(at)} is missing. ${keyHint(error, key)}`,
          points: "key",
          kind: "missing-key",
        },
      ];
    }
    case "enum": {
      const allowed = here
        .filter((other) => other.keyword === "enum")
        .flatMap((other) => words(other.params.allowedValues));
      return fault(notOneOf(written, valueAt(document, path), [...new Set(allowed)]));
    }
    case "pattern":
      return fault(`${written} cannot be read. ${patternHint(error, valueAt(document, path))}`);
    case "minimum":
    case "maximum":
    case "exclusiveMinimum":
    case "exclusiveMaximum":
      return fault(`${written} is out of range; ${rangeWords(error)}.`, { kind: "out-of-range" });
    case "type":
    case "anyOf":
    case "const": {
      const value = valueAt(document, path);
      const only = here.flatMap((other) =>
        other.keyword === "const" ? [String(other.params.allowedValue)] : [],
      );
      const guess = typeof value === "string" ? nearest(value, only) : undefined;
      if (guess !== undefined) return fault(`${written} is not a word known here. Did you mean ${guess}?`);
      return fault(`${written} cannot be read here. ${shapeHint(error, here)}`);
    }
    case "minItems":
      return fault("the list is empty; write at least one entry, or take the key out.");
    case "uniqueItems":
      return fault("an entry stands twice in this list; keep one.");
    case "minLength":
      return fault("the text is empty; write it, or take the key out.");
    default:
      return fault(`${written} ${error.message ?? "does not fit"}.`);
  }
}

/** Longer word lists are not printed when one of their words is near. */
const longList = 12;

function notOneOf(written: string, value: unknown, allowed: readonly string[]): string {
  const guess = typeof value === "string" ? nearest(value, allowed) : undefined;
  if (guess === undefined) return `${written} is not one of ${allowed.join(", ")}.`;
  const list = allowed.length > longList ? "a word known here" : `one of ${allowed.join(", ")}`;
  return `${written} is not ${list}. Did you mean ${guess}?`;
}

const words = (values: unknown): string[] =>
  (values as unknown[]).filter((value) => typeof value !== "boolean").map((value) => String(value));

/** A value as it was written, cut to one short line. */
function shown(value: unknown): string {
  if (value === undefined || value === null) return "a blank value";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a group of keys";
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…"` : text;
}

function keyHint(error: ErrorObject, key: string): string {
  const schema = (error.parentSchema?.properties as Record<string, { description?: string }> | undefined)?.[
    key
  ];
  const description = schema?.description;
  return description === undefined ? "Write it." : `Write it: ${description}.`;
}

/** The definition of the common schema that an error comes from, by the path of its schema. */
function commonHint(error: ErrorObject): { what: string; example: string | null } | undefined {
  const name = /common\.schema\.json.*?([a-z_]+)\/[a-zA-Z]+$/.exec(error.schemaPath)?.[1];
  return name === undefined ? undefined : hints[name];
}

function patternHint(error: ErrorObject, value: unknown): string {
  const parent = error.parentSchema as { description?: string; examples?: string[] } | undefined;
  const hint = commonHint(error);
  const what = hint?.what ?? parent?.description ?? "It has another form";
  const example = hint?.example ?? parent?.examples?.[0];
  const comma =
    typeof value === "string" && /\d,\d/.test(value) ? " Use a point, not a comma, before decimals." : "";
  return `${what}${example === undefined || example === null ? "" : `, such as ${example}`}.${comma}`;
}

function rangeWords(error: ErrorObject): string {
  const schema = error.parentSchema as {
    minimum?: number;
    maximum?: number;
    exclusiveMinimum?: number;
    exclusiveMaximum?: number;
  };
  const low = schema.minimum ?? schema.exclusiveMinimum;
  const high = schema.maximum ?? schema.exclusiveMaximum;
  if (low !== undefined && high !== undefined) return `write ${low} to ${high}`;
  return low === undefined ? `write ${high} or less` : `write ${low} or more`;
}

const shapes: Record<string, string> = {
  string: "a word or text (put digits in quotes)",
  number: "a number without unit",
  integer: "a whole number",
  boolean: "yes or no",
  object: "keys on lines of their own below it",
  array: "a list",
};

/** What could stand here, gathered from all alternatives at this place. */
function shapeHint(error: ErrorObject, here: readonly ErrorObject[]): string {
  const hint = here.map(commonHint).find((found) => found?.example != null);
  if (hint?.example != null) return `${hint.what}, such as ${hint.example}.`;
  const options = new Set<string>();
  for (const other of here) {
    if (other.keyword === "const") options.add(String(other.params.allowedValue));
    if (other.keyword !== "type") continue;
    for (const type of [other.params.type].flat()) options.add(shapes[String(type)] ?? String(type));
  }
  const description = (error.parentSchema as { description?: string } | undefined)?.description;
  if (options.size === 0) return description === undefined ? "It has another form." : `${description}.`;
  return `Write ${listing([...options], "or")}.`;
}

/** Turns a JSON pointer into a path; digits are list positions only where the document has a list. */
function pointerPath(pointer: string, document: unknown): Path {
  const path: (string | number)[] = [];
  for (const raw of pointer.split("/").slice(1)) {
    const step = raw.replaceAll("~1", "/").replaceAll("~0", "~");
    path.push(Array.isArray(valueAt(document, path)) ? Number(step) : step);
  }
  return path;
}
