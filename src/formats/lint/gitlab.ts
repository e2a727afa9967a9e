/** Code quality JSON, as the merge requests of GitLab read it. */
import type { Fault } from "../../cases/index.ts";
import { type Finding, type LintResult, rules } from "../../lint/index.ts";
import { visible } from "../../words/visible.ts";
import { toJson } from "../page/json.ts";
import { portablePath } from "../page/portable-path.ts";
import { fingerprints } from "./fingerprints.ts";
import { reported, unreadableRule } from "./report.ts";

const severities = { error: "major", warning: "minor", note: "info" } as const;
const alarms = new Set(rules.filter((rule) => rule.family === "alarm").map((rule) => rule.id));

/** An array with one entry a finding. A finding about a whole file is shown at its first line. */
export function lintGitlab(result: LintResult, unreadable: readonly Fault[]): string {
  const all = reported(result, unreadable);
  const names = fingerprints(all);
  const entries = all.map((finding, index) => ({
    description: visible(finding.message),
    check_name: finding.rule,
    fingerprint: names[index],
    severity: severity(finding),
    location: { path: visible(portablePath(finding.file)), lines: { begin: Math.max(1, finding.line) } },
  }));
  return toJson(entries);
}

/** Alarms stop the work, and so does a file that nobody could read. */
function severity({ rule, level }: Finding): string {
  if (alarms.has(rule) && level === "error") return "blocker";
  return rule === unreadableRule ? "critical" : severities[level];
}
