/** `carcase merge`: the results of all parts of an archive as those of one run. */
import { readInput } from "../cases/files/input.ts";
import { lintJson } from "../formats/lint/json.ts";
import { mergedHerd } from "./merge-herd.ts";
import { mergedLint } from "./merge-lint.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { type Part, partOf, whole } from "./shard.ts";
import { UsageError } from "./usage-error.ts";

export type MergeOptions = CommonOptions;

/** A part has a few hundred bytes a case. */
const mostBytes = 2 ** 29;

export function merge(run: Run<MergeOptions>): number {
  run.format({ json: true });
  const parts = whole(run.paths.map(read));
  if (parts[0].mark.command === "herd") {
    run.write(mergedHerd(parts as Parameters<typeof mergedHerd>[0]));
    return run.end();
  }
  const report = mergedLint(parts as Parameters<typeof mergedLint>[0]);
  run.write(lintJson(report));
  if (report.unreadable.length > 0) return 2;
  return run.end(report.result.findings.some(({ level }) => report.failing.includes(level)));
}

function read(file: string): Part<unknown, unknown, unknown> {
  const found = readInput(file, mostBytes);
  if (!found.ok) throw new UsageError(`${file}: ${found.message}`);
  return partOf(file, found.bytes.toString("utf8"));
}
