/** A finding of the linter, with its place. The first seven fields are an interface that scripts rely on. */
import { formatPath, type Path, valueAt } from "../cases/index.ts";
import type { SourceDocument } from "../cases/yaml/document.ts";
import { ownCopy } from "../words/own-copy.ts";
import type { Level } from "./rule.ts";

export interface Finding {
  readonly rule: string;
  readonly level: Level;
  readonly message: string;
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  readonly column: number;
  /** Where in the document, such as `respiratory.lungs.consolidation.left_cranial`. */
  readonly path: string;
  /** How many characters the caret marks. */
  readonly length: number;
  /** The text of the line. */
  readonly excerpt: string;
}

/** Gives a report its place in the file of its subject. */
export function placeFinding(
  rule: string,
  level: Level,
  message: string,
  subject: { readonly file: string; readonly document: SourceDocument },
  path: Path,
  points: "key" | "value",
): Finding {
  const { document, file } = subject;
  const place = points === "key" ? document.whereKey(path) : document.where(path);
  // Where not even the first key is there, the first line of the file shows nothing.
  const shows = path[0] === undefined || valueAt(document.value, path.slice(0, 1)) !== undefined;
  const text = shows ? ownCopy(document.line(place.line)) : "";
  return { rule, level, message, file, ...place, path: formatPath(path), excerpt: text };
}
