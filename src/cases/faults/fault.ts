/** Something wrong with a file itself, before any rule is asked. */
import type { Path } from "../model/path.ts";
import type { SourceDocument } from "../yaml/document.ts";

export interface Fault {
  readonly file: string;
  /** Counted from 1; 0 when the whole file is meant. */
  readonly line: number;
  readonly column: number;
  readonly length: number;
  readonly path: Path;
  /** The path that was meant, where a mistyped or misplaced key can be recognised; else the same as `path`. */
  readonly intended: Path;
  readonly message: string;
  /** The text of the line, empty when the whole file is meant. */
  readonly excerpt: string;
  /** unreadable: nothing could be made of the file. format: a value does not fit the format. */
  readonly kind: "unreadable" | "format";
  /** An observation beyond its range, which has a rule of its own. */
  readonly outOfRange: boolean;
  /** The rule of the linter that reports it, where it is another than that of the format of cases. */
  readonly rule?: string;
}

/** A fault of a whole file. */
export function fileFault(file: string, message: string): Fault {
  return {
    file,
    line: 0,
    column: 0,
    length: 0,
    path: [],
    intended: [],
    message,
    excerpt: "",
    kind: "unreadable",
    outOfRange: false,
  };
}

/** Stands in place of what a file outside the repository holds. */
export const notShown = "content not shown: the file lies outside the repository";

/** What is wrong at a path of a file that was read; of a file that must not be shown, no more than where. */
export function placedFault(
  { file, document }: { readonly file: string; readonly document: SourceDocument },
  path: Path,
  message: string,
  more: Partial<Fault> & { readonly points?: "key" | "value" } = {},
): Fault {
  const { points = "value", ...rest } = more;
  const place = points === "key" ? document.whereKey(path) : document.where(path);
  return {
    ...fileFault(file, document.isHidden ? `something here does not fit (${notShown})` : message),
    kind: "format",
    intended: path,
    ...rest,
    ...place,
    path,
    excerpt: document.line(place.line),
  };
}
