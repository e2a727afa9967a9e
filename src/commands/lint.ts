/** `carcase lint`: what was skipped, contradictory or unsafe, at which line? */
import { unknownName } from "../cases/index.ts";
import { lintJson, lintText } from "../formats/index.ts";
import { type Level, levels, lintCases, rules } from "../lint/index.ts";
import { chosenFormat, openArchive } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { resultStyle, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export function runLint(
  paths: readonly string[],
  options: CommonOptions & { readonly failOn: string },
): number {
  const format = chosenFormat(options, ["text", "json"]);
  const failing = failingLevels(options.failOn);
  const { archive, failed } = openArchive(paths, options);
  checkRuleNames(archive.cases);
  const result = lintCases(archive);
  const text =
    format === "json"
      ? lintJson(result, archive.unreadable)
      : lintText(result, { style: resultStyle(options), quiet: options.quiet === true });
  writeResult(text, options);
  if (failed) return 2;
  return result.findings.some((finding) => failing.includes(finding.level)) ? 1 : 0;
}

/** The levels at or above the one named. */
function failingLevels(name: string): readonly Level[] {
  const at = (levels as readonly string[]).indexOf(name);
  if (at < 0) throw new UsageError(`--fail-on: ${unknownName(name, levels, "level")}`);
  return levels.slice(0, at + 1);
}

/** @throws UsageError when the settings of a case give a level to a rule that does not exist */
function checkRuleNames(cases: ReturnType<typeof openArchive>["archive"]["cases"]): void {
  const known = rules.map((rule) => rule.id);
  for (const settings of new Set(cases.map((one) => one.settings)))
    for (const id of Object.keys(settings.rules))
      if (!known.includes(id))
        throw new UsageError(`${settings.file}: rules: ${unknownName(id, known, "rule")}`);
}
