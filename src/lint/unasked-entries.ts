/** Entries of a baseline that a run says nothing about: their finding may be there all the same. */
import type { BaselineEntry } from "../generated/baseline.types.ts";
import type { FileKey } from "./baseline.ts";
import { type LintedParts, type LintOptions, levelFor } from "./linter.ts";
import { rules } from "./rules/index.ts";

/**
 * An entry is unasked where its rule is off for its file, and where a value of the file, or of its visit, could not be
 * read: what stands there may be what the rule would have found.
 */
export function unaskedEntries(
  parts: readonly LintedParts[],
  options: LintOptions,
  key: FileKey,
): (entry: Pick<BaselineEntry, "file" | "rule">) => boolean {
  const files = new Map(parts.flatMap((part) => [...part.files].map(([file, one]) => [key(file), one])));
  return ({ file, rule: id }) => {
    const linted = files.get(file);
    const rule = rules.find((one) => one.id === id);
    if (linted === undefined || rule === undefined) return false;
    return linted.unsound || levelFor(rule, linted, options) === "off";
  };
}
