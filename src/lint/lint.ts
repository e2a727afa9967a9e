/** Runs the rules over a whole archive. The order of findings is that of files, lines, columns and rule ids. */
import type { Archive } from "../cases/index.ts";
import { gradeFaults } from "./grade-faults.ts";
import { Linter, type LintOptions, type LintResult, lintResult } from "./linter.ts";

/**
 * Checks all cases of an archive.
 * @returns findings, the completeness of each case and visit, and their sums. Files that could not be read are not
 * in it; they are in `archive.unreadable`, and counted in the summary
 * @throws UnknownRule when the options, or the settings of a case, name a rule that does not exist
 */
export function lintCases(archive: Archive, options: LintOptions = {}): LintResult {
  const linter = new Linter(options);
  linter.gradeCheck = gradeFaults;
  linter.add(archive);
  for (const scale of archive.scales) linter.addScale(scale);
  return lintResult([linter.parts()], archive.unreadable);
}
