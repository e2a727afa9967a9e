/** `carcase lint --fix`: what is certain is put right first, and what is left is reported. */
import { resolve } from "node:path";
import { readCases } from "../cases/index.ts";
import { fixFiles, unifiedDiff } from "../fix/index.ts";
import { fixReport } from "../formats/fix/report.ts";
import { type Opened, openedFrom } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { styleFor, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { writeWhole } from "./write-file.ts";

export interface FixOptions {
  readonly fix?: true;
  readonly dryRun?: true;
}

/** @throws UsageError when the options do not fit together */
export function checkFixOptions(paths: readonly string[], { fix, dryRun }: FixOptions): void {
  if (dryRun && !fix) throw new UsageError("--dry-run goes with --fix");
  if (fix && paths.includes("-"))
    throw new UsageError("--fix: a case from standard input cannot be fixed in place");
}

/**
 * Fixes the files under the paths, when that is asked for. All other options must have been checked: nothing is fixed
 * by a command that cannot do what else it was asked for.
 * @returns the archive as it is now, or the exit code where the command ends here (`--dry-run`): 1 when there is something
 *   to fix
 * @throws UsageError when the settings asked for cannot be used, or a file cannot be written
 */
export function fixFirst(
  opened: Opened,
  paths: readonly string[],
  options: CommonOptions & FixOptions,
): Opened | number {
  const { fix, dryRun, config } = options;
  const { archive, failed } = opened;
  if (!fix) return opened;
  if (config !== undefined && archive.unreadable.some(({ file }) => resolve(file) === resolve(config)))
    throw new UsageError(
      `--fix: nothing was fixed, because the settings of --config ${config} cannot be used`,
    );
  const fixed = fixFiles(archive, paths);
  if (dryRun) {
    writeResult(fixed.map(({ file, before, after }) => unifiedDiff(file, before, after)).join(""), options);
    if (failed) return 2;
    return fixed.length > 0 ? 1 : 0;
  }
  for (const one of fixed) {
    writeWhole(one.file, one.after);
    if (!options.quiet) process.stderr.write(fixReport(one, styleFor(process.stderr, options)));
  }
  return openedFrom(readCases(paths, config === undefined ? {} : { config }));
}
