/** The linter with the scales at hand. Apart from the engine: a file that imports the scales is bundled with them. */
import type { Archive } from "../cases/index.ts";
import { gradeFaults } from "./grade-faults.ts";
import { type LintOptions, type LintResult, lintWith } from "./lint.ts";

/**
 * Checks all cases of an archive.
 * @returns findings, the completeness of each case and visit, and their sums. Files that could not be read are not
 * in it; they are in `archive.unreadable`, and counted in the summary
 * @throws UnknownRule when the options, or the settings of a case, name a rule that does not exist
 */
export const lintCases = (archive: Archive, options: LintOptions = {}): LintResult =>
  lintWith(archive, options, gradeFaults);
