/** `carcase lint --fix`: what is certain is put right first, and what is left is reported. */
import { resolve } from "node:path";
import type { Archive } from "../cases/index.ts";
import { type FixedFile, fixFiles, unifiedDiff } from "../fix/index.ts";
import { fixReport } from "../formats/fix/report.ts";
import type { CommonOptions } from "./options.ts";
import type { Change, Run } from "./run.ts";
import { speak } from "./streams.ts";
import { UsageError } from "./usage-error.ts";

export interface FixOptions {
  readonly fix?: true;
  readonly dryRun?: true;
}

/** @throws UsageError when the options do not fit together */
export function checkFixOptions({ paths, options: { fix, dryRun } }: Run<CommonOptions & FixOptions>): void {
  if (dryRun && !fix) throw new UsageError("--dry-run goes with --fix");
  if (fix && paths.includes("-"))
    throw new UsageError("--fix: a case from standard input cannot be fixed in place");
}

/**
 * What can be put right in the files under the paths. All other options must have been checked: nothing is fixed by a
 * command that cannot do what else it was asked for.
 * @throws UsageError when the settings asked for cannot be used
 */
export function fixesOf(archive: Archive, { paths, options: { config } }: Run): FixedFile[] {
  if (typeof config === "string" && archive.unreadable.some(({ file }) => resolve(file) === resolve(config)))
    throw new UsageError(
      `--fix: nothing was fixed, because the settings of --config ${config} cannot be used`,
    );
  return fixFiles(archive, paths);
}

/** Writes the fixed files and says what was put right. */
export function writeFixes(fixed: readonly FixedFile[], run: Run): void {
  for (const one of fixed) if (run.rewrite(one) && !run.options.quiet) speak(fixReport(one, run.spoken));
}

/** Writes a diff instead of the files. @returns the exit code: 1 when there is something to change */
export function writeDiff(changes: readonly Change[], run: Run): number {
  const diff = changes.map(({ file, before, after }) => unifiedDiff(file, before, after)).join("");
  run.write(diff, { sample: "--- a/", format: "diff" });
  return run.end(changes.length > 0);
}
