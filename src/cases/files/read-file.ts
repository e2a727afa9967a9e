/** Reads one file of a known kind: text, document, valid content, faults. */
import { type Fault, fileFault } from "../faults/fault.ts";
import { type FileKind, type Validated, validate } from "../faults/validate.ts";
import { isKeyed } from "../model/path.ts";
import type { SourceDocument } from "../yaml/document.ts";
import { parseYaml } from "../yaml/parse-yaml.ts";
import { readText, type TextResult } from "./read-text.ts";

/** A document whose top is a set of keys. */
export interface KeyedDocument {
  readonly document: SourceDocument;
  readonly value: Record<string, unknown>;
}

export type ReadResult<T> =
  | { readonly ok: true; readonly result: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Reads a file as YAML whose top is a set of keys.
 * @param file the path to show; @param location the path to open
 */
export function readDocument(file: string, location: string): ReadResult<KeyedDocument> {
  return keyedDocument(file, readText(location));
}

/** The same from text that is already there. */
export function keyedDocument(file: string, text: TextResult): ReadResult<KeyedDocument> {
  if (!text.ok)
    return {
      ok: false,
      faults: text.faults.map(({ message, place, excerpt = "" }) => ({
        ...fileFault(file, message),
        ...place,
        excerpt,
      })),
    };
  const parsed = parseYaml(text.text);
  if (!parsed.ok)
    return {
      ok: false,
      faults: parsed.faults.map(({ message, place }) => ({
        ...fileFault(file, message),
        ...place,
        excerpt: parsed.line(place.line),
      })),
    };
  const { document } = parsed;
  const { value } = document;
  if (isKeyed(value)) return { ok: true, result: { document, value } };
  const place = { ...document.where([]), length: 1 };
  const message = `the file begins with ${Array.isArray(value) ? "a list" : "text"}; it must begin with keys, such as format: 1`;
  return {
    ok: false,
    faults: [{ ...fileFault(file, message), ...place, excerpt: document.line(place.line) }],
  };
}

/** Validates a document and places its faults in the text. */
export function checkDocument(
  kind: FileKind,
  file: string,
  { document, value }: KeyedDocument,
): Validated & { placed: Fault[] } {
  const validated = validate(kind, value);
  const placed = validated.faults.map((fault) => {
    const place = fault.points === "key" ? document.whereKey(fault.path) : document.where(fault.path);
    return {
      file,
      ...place,
      path: fault.path,
      intended: fault.intended,
      message: fault.message,
      excerpt: document.line(place.line),
      kind: "format" as const,
      outOfRange: fault.kind === "out-of-range",
    };
  });
  return { ...validated, placed };
}
