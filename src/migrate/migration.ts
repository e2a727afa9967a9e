/** What changes from one version of the format to the next. */
import type { FileKind } from "../cases/faults/validate.ts";
import type { Keyed, Path } from "../cases/model/path.ts";

/** A step of a migration at a path of the value as it was read. */
export type Step =
  /** The key at the path gets another name. */
  | { readonly path: Path; readonly key: string }
  /** The word, text or number at the path becomes another. */
  | { readonly path: Path; readonly value: string | number | boolean }
  /** The entry at the path goes; what was said behind it stays as a comment. */
  | { readonly path: Path; readonly gone: true };

/** From a version of the format to the next one. The number at the top of the file changes by itself. */
export interface Migration {
  readonly from: number;
  /** What changes, in a sentence. */
  readonly says: string;
  /** What has to be done to a file; nothing where only its number changes. */
  steps(kind: FileKind, value: Keyed): readonly Step[];
}

/** Those that this carcase knows, the oldest first. Format 1 is the first, so there is none. */
export const migrations: readonly Migration[] = [];
