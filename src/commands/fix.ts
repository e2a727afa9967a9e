/** `carcase lint --fix`: what is certain is put right first, and what is left is reported. */
import { readCases } from "../cases/index.ts";
import { fixFiles, unifiedDiff } from "../fix/index.ts";
import { fixReport } from "../formats/fix-report.ts";
import { openArchive } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { styleFor, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { writeWhole } from "./write-file.ts";

export interface FixOptions {
  readonly fix?: true;
  readonly dryRun?: true;
}

/**
 * Fixes the files under the paths, when that is asked for.
 * @returns the exit code where the command ends here (`--dry-run`): 1 when there is something to fix
 * @throws UsageError when the options do not fit together, or a file cannot be written
 */
export function fixFirst(paths: readonly string[], options: CommonOptions & FixOptions): number | undefined {
  if (options.dryRun && !options.fix) throw new UsageError("--dry-run goes with --fix");
  if (!options.fix) return undefined;
  if (paths.includes("-")) throw new UsageError("--fix: a case from standard input cannot be fixed in place");
  if (options.dryRun) {
    const { archive, failed } = openArchive(paths, options);
    const diffs = fixFiles(archive, paths).map(({ file, before, after }) => unifiedDiff(file, before, after));
    writeResult(diffs.join(""), options);
    if (failed) return 2;
    return diffs.length > 0 ? 1 : 0;
  }
  const archive = readCases(paths, options.config === undefined ? {} : { config: options.config });
  for (const fixed of fixFiles(archive, paths)) {
    writeWhole(fixed.file, fixed.after);
    if (!options.quiet) process.stderr.write(fixReport(fixed, styleFor(process.stderr, options)));
  }
  return undefined;
}
