/** Workflow commands of GitHub: each finding is an annotation at its line. */
import type { Finding } from "../../lint/index.ts";
import { visible } from "../../words/visible.ts";
import { portablePath } from "../page/portable-path.ts";
import { makeStyle } from "../page/style.ts";
import { passedOverLines } from "../passed-over.ts";
import { type LintReport, reported } from "./report.ts";
import { summaryLine } from "./text.ts";

const commands = { error: "error", warning: "warning", note: "notice" } as const;

/** One line a finding, then the last line of the text, which stands in the log. */
export function lintGithub({ result, unreadable, passedOver, only }: LintReport): string {
  const lines = reported(result, unreadable).map(
    (finding) =>
      `::${commands[finding.level]} ${properties(finding)}::${escapeData(visible(finding.message))}`,
  );
  return [...lines, summaryLine(result, makeStyle(false), only), ...passedOverLines(passedOver)]
    .map((line) => `${line}\n`)
    .join("");
}

function properties({ file, line, column, length, rule }: Finding): string {
  const place = line === 0 ? {} : { line, endLine: line, col: column, endColumn: column + length };
  return Object.entries({ file: visible(portablePath(file)), ...place, title: rule })
    .map(([name, value]) => `${name}=${escapeProperty(String(value))}`)
    .join(",");
}

const escapeData = (text: string): string =>
  text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");

const escapeProperty = (text: string): string =>
  escapeData(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
