/** What a path on the command line led to. */
import { isResultsName } from "./file-kind.ts";
import type { Level } from "./ignore-rules.ts";

export interface Found {
  readonly path: string;
  readonly files: readonly FoundFile[];
  /** YAML files that the settings exclude, but for those in folders that they exclude. */
  readonly excluded: readonly string[];
  readonly faults: readonly { readonly file: string; readonly message: string }[];
}

/**
 * By folder that was looked through, the names in it of what stands around records: of visits, farms, settings and results,
 * and what begins with a full stop.
 */
export type Beside = Map<string, readonly string[]>;

export const isBeside = (name: string): boolean =>
  name.startsWith(".") || /^(?:visit|farm|carcase)\.yaml$/i.test(name) || isResultsName(name);

/** The rules by which settings exclude files that are found in a folder. */
export type Excluding = (folder: string) => Level | undefined;

export interface FoundFile {
  readonly file: string;
  /** Where it lies, where that is known. */
  readonly location?: string;
  /**
   * named: by the user, so it is read whatever it looks like and whatever is ignored. walked: found by looking through
   * its whole folder. matched: by a pattern, which may have left out other files of its folder.
   */
  readonly how: "named" | "walked" | "matched";
}
