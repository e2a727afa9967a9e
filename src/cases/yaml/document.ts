/**
 * The one interface between the rest of the program and whatever parses the files: text in, a plain value
 * out, and a place in the text for every path. Only `yaml-document.ts` knows the parser.
 */
import type { Path } from "../model/path.ts";

/** A place in a text. Lines and columns count from 1; length is in characters, at least 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly length: number;
}

export interface SourceDocument {
  readonly text: string;
  /** The plain value of the document. Keys without a value hold null. */
  readonly value: unknown;
  /** Set where nothing that is written in it may be shown. */
  readonly isHidden?: boolean;
  /**
   * The place of a path. A path that does not exist has the place of its nearest parent's key, which is where a
   * person would add what is missing.
   */
  where(path: Path): Place;
  /** The place of the key that leads to a path, or of the value in a list. */
  whereKey(path: Path): Place;
  /** One line of the text, without its line end; empty when there is no such line. */
  line(number: number): string;
}

/** Something that prevents a text from being read, with its place. */
interface SyntaxFault {
  readonly message: string;
  readonly place: Place;
}

export type Parsed =
  | { readonly ok: true; readonly document: SourceDocument }
  | { readonly ok: false; readonly faults: readonly SyntaxFault[]; line(number: number): string };
