/** Reads one file of a known kind: text, document, valid content, faults. */
import { type Fault, fileFault, notShown, placedFault } from "../faults/fault.ts";
import { withTypingFaults } from "../faults/typing-faults.ts";
import { type FileKind, type Validated, validate } from "../faults/validate.ts";
import { isKeyed, type Path } from "../model/path.ts";
import type { Place, SourceDocument } from "../yaml/document.ts";
import { parseYaml } from "../yaml/parse-yaml.ts";
import { otherFormat } from "./format-version.ts";
import { readText, type TextResult } from "./read-text.ts";
import type { Repository } from "./repository.ts";
import { Remembered } from "./witness.ts";

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
 * @param repository what lies outside of it is read and not shown
 */
export const readDocument = (
  file: string,
  location: string,
  repository: Repository,
): ReadResult<KeyedDocument> =>
  keyedDocument(file, readText(location), new Remembered(() => !repository.holds(location)));

/** The same from text that is already there. @param hidden whether the text must not be shown */
export function keyedDocument(
  file: string,
  text: TextResult,
  hidden = new Remembered(() => false),
): ReadResult<KeyedDocument> {
  if (!text.ok)
    return unread(
      text.faults.map(({ message, place, excerpt = "" }) => ({
        ...fileFault(file, message),
        ...place,
        excerpt: place !== undefined && hidden.value ? "" : excerpt,
      })),
    );
  const parsed = parseYaml(text.text);
  if (!parsed.ok)
    return unread(
      parsed.faults.map(({ message, place }) => ({
        ...fileFault(file, hidden.value ? `it is no YAML from here on (${notShown})` : message),
        ...place,
        excerpt: hidden.value ? "" : parsed.line(place.line),
      })),
    );
  const document = new FileDocument(parsed.document, hidden);
  const { value } = document;
  if (isKeyed(value)) {
    const other = otherFormat(value);
    if (other === undefined) return { ok: true, result: { document, value } };
    // Of what another version means nothing is guessed, least of all that something is missing.
    return unread([placedFault({ file, document }, ["format"], other, { kind: "unreadable" })]);
  }
  const message = `the file begins with ${Array.isArray(value) ? "a list" : "text"}; it must begin with keys, such as format: 1`;
  return unread([placedFault({ file, document }, [], message, { kind: "unreadable", points: "key" })]);
}

const unread = (faults: readonly Fault[]) => ({ ok: false as const, faults });

/** A document with what is known of its file; whether it may be shown is asked only when something is to be shown. */
class FileDocument implements SourceDocument {
  readonly #document: SourceDocument;
  readonly #hidden: Remembered<boolean>;

  constructor(document: SourceDocument, hidden: Remembered<boolean>) {
    this.#document = document;
    this.#hidden = hidden;
  }

  get value(): unknown {
    return this.#document.value;
  }

  get text(): string {
    return this.#document.text;
  }

  get isHidden(): boolean {
    return this.#hidden.value;
  }

  where(path: Path): Place {
    return this.#document.where(path);
  }

  whereKey(path: Path): Place {
    return this.#document.whereKey(path);
  }

  line(number: number): string {
    return this.isHidden ? "" : this.#document.line(number);
  }
}

/** Validates a document and places its faults in the text. */
export function checkDocument(
  kind: FileKind,
  file: string,
  { document, value }: KeyedDocument,
): Validated & { placed: Fault[] } {
  const validated = validate(kind, value);
  const placed = withTypingFaults(document, validated.faults).map(
    ({ path, message, points, intended, kind: fault }) =>
      placedFault({ file, document }, path, message, {
        points,
        intended,
        outOfRange: fault === "out-of-range",
      }),
  );
  return { ...validated, placed };
}
