/** Parses one text: the quick way where it is ordinary and right, else with the parser that finds and explains every error. */

import type { Path } from "../model/path.ts";
import type { Parsed, Place, SourceDocument } from "./document.ts";
import { quickTree, quickValue } from "./quick-tree.ts";
import { PlacedDocument } from "./source-places.ts";
import { TextLines } from "./text-lines.ts";
import { parseSlowly } from "./yaml-document.ts";

/**
 * @param text decoded text without byte order mark
 * @returns the document, or every fault that keeps it from being read
 */
export function parseYaml(text: string): Parsed {
  const quick = quickValue(text);
  return quick === undefined
    ? parseSlowly(text)
    : { ok: true, document: new QuickDocument(text, quick.value) };
}

/** A text that was read without its places: they are looked for when the first is asked. */
class QuickDocument implements SourceDocument {
  readonly value: unknown;
  readonly text: string;
  #placed: SourceDocument | undefined;

  constructor(text: string, value: unknown) {
    this.text = text;
    this.value = value;
  }

  where(path: Path): Place {
    return this.#places().where(path);
  }

  whereKey(path: Path): Place {
    return this.#places().whereKey(path);
  }

  line(number: number): string {
    return this.#places().line(number);
  }

  #places(): SourceDocument {
    if (this.#placed !== undefined) return this.#placed;
    this.#placed = new PlacedDocument(quickTree(this.text), new TextLines(this.text));
    return this.#placed;
  }
}
