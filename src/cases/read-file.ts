/** Reads one file of a known kind: text, document, valid content, faults. */
import type { SourceDocument } from "./document.ts";
import { type Fault, fileFault } from "./fault.ts";
import { readText, type TextResult } from "./read-text.ts";
import { type FileKind, type Validated, validate } from "./validate.ts";
import { parseYaml } from "./yaml-document.ts";

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
  if (!text.ok) return { ok: false, faults: [fileFault(file, text.message)] };
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
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return {
      ok: false,
      faults: [
        {
          ...fileFault(file, "a file begins with keys such as format: and case:"),
          line: 1,
          column: 1,
          length: 1,
          excerpt: document.line(1),
        },
      ],
    };
  return { ok: true, result: { document, value: value as Record<string, unknown> } };
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
      message: fault.message,
      excerpt: document.line(place.line),
      kind: "format" as const,
      outOfRange: fault.kind === "out-of-range",
    };
  });
  return { ...validated, placed };
}
