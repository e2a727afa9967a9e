/** Counts of findings by level and file. */
import type { Finding } from "./finding.ts";
import type { Level } from "./rule.ts";

export interface FindingCounts {
  readonly files_with_findings: number;
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
}

export function findingCounts(findings: readonly Finding[]): FindingCounts {
  const at = (level: Level): number => findings.filter((finding) => finding.level === level).length;
  return {
    files_with_findings: new Set(findings.map((finding) => finding.file)).size,
    errors: at("error"),
    warnings: at("warning"),
    notes: at("note"),
  };
}
