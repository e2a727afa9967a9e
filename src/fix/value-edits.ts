/** The edits of values and keys that are certain. */

import { formatPath, type Path } from "../cases/index.ts";
import type { SourceDocument } from "../cases/yaml/document.ts";
import { type FixedKind, keysAt, probe } from "./probe.ts";
import { sampleNames } from "./sample-names.ts";
import { isReadOtherwise, sameQuantity, sameWord } from "./spelling.ts";
import type { TextEdit } from "./text-edit.ts";

/** One certain change of a document. */
export interface ValueEdit extends TextEdit {
  /** The place of the value, or of the key. */
  readonly path: Path;
  readonly line: number;
  readonly message: string;
  /** The value that stands at the path afterwards, or the name of the key. */
  readonly becomes: { readonly value: string } | { readonly key: string };
}

/** @param text the text that the document was read from */
export function valueEdits(
  text: string,
  document: SourceDocument,
  kind: FixedKind,
  value: Record<string, unknown>,
): ValueEdit[] {
  const lines = lineStarts(text);
  const placed = (path: Path, points: "key" | "value"): Placed => {
    const { line, column, length } = points === "key" ? document.whereKey(path) : document.where(path);
    const start = (lines[line - 1] ?? 0) + column - 1;
    return { line, start, end: start + length, raw: text.slice(start, start + length) };
  };
  const { texts, keys } = probe(kind, value);
  const edits: ValueEdit[] = [];
  for (const { path, text: written, words, patterns, free } of texts) {
    const place = placed(path, "value");
    const quote = quoteOf(place.raw, written);
    if (quote === undefined) continue;
    const word = sameWord(written, [...words, ...sampleNames(patterns)]);
    const quantity = word === undefined ? sameQuantity(written, patterns) : undefined;
    const fits = free || patterns.some((pattern) => new RegExp(pattern, "u").test(written));
    if (word !== undefined) edits.push(edit(path, place, `${quote}${word}${quote}`, word));
    // A quantity needs no quotes.
    else if (quantity !== undefined) edits.push(edit(path, place, quantity, quantity));
    else if (quote === "" && fits && !words.includes(written) && isReadOtherwise(written))
      edits.push(edit(path, place, `"${written}"`, written));
  }
  const taken = new Set<string>();
  for (const { path, key, known } of keys) {
    const place = placed([...path, key], "key");
    const quote = quoteOf(place.raw, key);
    const intended = sameWord(key, known);
    if (quote === undefined || intended === undefined) continue;
    const at = [...path, intended];
    if (keysAt(value, path).includes(intended) || taken.has(formatPath(at))) continue;
    taken.add(formatPath(at));
    edits.push({
      ...edit([...path, key], place, `${quote}${intended}${quote}`, intended),
      message: `${formatPath([...path, key])} -> ${formatPath(at)}`,
      becomes: { key: intended },
    });
  }
  return edits;
}

interface Placed {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly raw: string;
}

function edit(path: Path, { line, start, end, raw }: Placed, text: string, value: string): ValueEdit {
  const message = `${formatPath(path)}: ${raw} -> ${text}`;
  return { path, line, start, end, text, message, becomes: { value } };
}

/** The quotes around a text; undefined where it is written in another way, such as over several lines. */
function quoteOf(raw: string, text: string): string | undefined {
  return ["", '"', "'"].find((quote) => raw === `${quote}${text}${quote}`);
}

function lineStarts(text: string): number[] {
  return [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)];
}
