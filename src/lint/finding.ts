/** A finding of the linter, with its place. The first seven fields are an interface that scripts rely on. */
import { formatPath, type Path, valueAt } from "../cases/index.ts";
import type { Place, SourceDocument } from "../cases/yaml/document.ts";
import { namedSchema } from "../schemas/index.ts";
import { ownCopy } from "../words/own-copy.ts";
import type { Level, Points } from "./rule.ts";

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
  points: Points,
): Finding {
  const { document, file } = subject;
  const place = placeOf(document, path, points);
  // Where not even the first key is there, the first line of the file shows nothing.
  const shows = path[0] === undefined || valueAt(document.value, path.slice(0, 1)) !== undefined;
  const text = shows ? ownCopy(document.line(place.line)) : "";
  return { rule, level, message, file, ...place, path: shownPath(document, path), excerpt: text };
}

function placeOf(document: SourceDocument, path: Path, points: Points): Place {
  const named = points === "schema line" ? namedSchema(document.text) : undefined;
  if (named !== undefined) return { line: named.line, column: named.column, length: named.schema.length };
  return points === "key" ? document.whereKey(path) : document.where(path);
}

/** Keys are content, too. */
export const shownPath = ({ isHidden }: SourceDocument, path: Path): string =>
  isHidden ? "" : formatPath(path);
