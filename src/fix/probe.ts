/**
 * What the format wants at each place of a document, asked of the compiled schemas: every text is replaced by one that
 * fits nowhere but in free text, and the errors tell what would have fitted. So a value that fits is known too.
 */
import type { ErrorObject } from "ajv";
import { errorsOf } from "../cases/faults/full-validator.ts";
import { pointerPath } from "../cases/faults/schema-faults.ts";
import { type Path, valueAt } from "../cases/index.ts";
import { eachText } from "../record/index.ts";
import { grouped } from "../words/grouped.ts";

/** Files that can be fixed. */
export type FixedKind = "case" | "visit" | "farm";

/** A text and what may stand in its place. */
interface Wanted {
  readonly path: Path;
  readonly text: string;
  /** Words of which one must stand here. */
  readonly words: readonly string[];
  /** Regular expressions of which one must match. */
  readonly patterns: readonly string[];
  /** Whether any text may stand here. */
  readonly free: boolean;
}

/** A key that does not exist, and those that do in its place. */
interface UnknownKey {
  /** The path of what holds the key. */
  readonly path: Path;
  readonly key: string;
  readonly known: readonly string[];
}

export interface Probed {
  readonly texts: readonly Wanted[];
  readonly keys: readonly UnknownKey[];
}

export function probe(kind: FixedKind, value: Record<string, unknown>): Probed {
  const errors = errorsOf(kind, replaced(value));
  const byPath = grouped(errors, ({ instancePath }) => JSON.stringify(pointerPath(instancePath, value)));
  const texts: Wanted[] = [];
  eachText(value, (text, _key, pathOf) => {
    const path = pathOf();
    const here = byPath.get(JSON.stringify(path)) ?? [];
    texts.push({ path, text, words: wordsOf(here), patterns: patternsOf(here), free: here.length === 0 });
  });
  const keys = [...byPath].flatMap(([id, here]) => unknownKeys(JSON.parse(id) as Path, here));
  return { texts, keys };
}

/** The keys of a file, or of what stands in it at a path of keys, in the order of the schema. */
export function keyOrder(kind: FixedKind, path: Path = []): readonly string[] {
  const at = path.map((step) => `/${step}`).join("");
  // The schema is not in the program, but each of its errors carries the part that was not met.
  return errorsOf(kind, nested(path, { "": null })).flatMap((error) =>
    error.keyword === "additionalProperties" && error.instancePath === at ? knownKeys(error) : [],
  );
}

/** The words of the format that may stand at a path, and whether other texts may as well. */
export function wordsAt(
  kind: FixedKind,
  path: Path,
): { readonly words: readonly string[]; readonly isOpen: boolean } {
  const at = path.map((step) => `/${typeof step === "number" ? 0 : step}`).join("");
  const here = errorsOf(kind, nested(path, nothing)).filter(({ instancePath }) => instancePath === at);
  const words = wordsOf(here);
  return { words, isOpen: words.length === 0 || patternsOf(here).length > 0 };
}

/** A value at a path with nothing beside it; a number is a place in a list. */
const nested = (path: Path, value: unknown): unknown =>
  path.reduceRight((inside, step) => (typeof step === "number" ? [inside] : { [step]: inside }), value);

/** Fits no pattern and is no word of the format. */
const nothing = "?";

function replaced(value: unknown): unknown {
  if (typeof value === "string") return nothing;
  if (Array.isArray(value)) return value.map(replaced);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, replaced(item)]));
}

function wordsOf(errors: readonly ErrorObject[]): string[] {
  const words = errors.flatMap(({ keyword, params }): unknown[] =>
    keyword === "enum" ? params.allowedValues : keyword === "const" ? [params.allowedValue] : [],
  );
  return [...new Set(words.filter((word) => typeof word === "string"))];
}

const patternsOf = (errors: readonly ErrorObject[]): string[] =>
  errors.flatMap(({ keyword, params }) => (keyword === "pattern" ? [String(params.pattern)] : []));

function unknownKeys(path: Path, errors: readonly ErrorObject[]): UnknownKey[] {
  const refused = errors.filter(({ keyword }) => keyword === "additionalProperties");
  const known = [...new Set(refused.flatMap(knownKeys))];
  const keys = new Set(refused.map(({ params }) => String(params.additionalProperty)));
  return [...keys].filter((key) => !known.includes(key)).map((key) => ({ path, key, known }));
}

const knownKeys = ({ parentSchema }: ErrorObject): string[] => Object.keys(parentSchema?.properties ?? {});

/** The keys that an object of the document has. */
export function keysAt(value: unknown, path: Path): string[] {
  const found = valueAt(value, path);
  return typeof found === "object" && found !== null ? Object.keys(found) : [];
}
