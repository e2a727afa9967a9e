/** The linter's result in every format it is asked for in. */
import type { Style } from "../page/style.ts";
import { lintGithub } from "./github.ts";
import { lintGitlab } from "./gitlab.ts";
import { lintHtml } from "./html.ts";
import { lintJson } from "./json.ts";
import { lintJunit } from "./junit.ts";
import type { LintReport } from "./report.ts";
import { lintSarif } from "./sarif.ts";
import { lintText } from "./text.ts";

export const lintFormats = ["text", "json", "sarif", "junit", "github", "gitlab", "html"] as const;
export type LintFormat = (typeof lintFormats)[number];

const writers: Record<LintFormat, (report: LintReport, style: Style, width: number) => string> = {
  text: ({ result, passedOver, quiet, only }, style, width) =>
    lintText(result, { style, width, quiet, passedOver, ...(only && { only }) }),
  json: lintJson,
  sarif: lintSarif,
  junit: lintJunit,
  github: lintGithub,
  html: lintHtml,
  gitlab: ({ result, unreadable }) => lintGitlab(result, unreadable),
};

/**
 * The report in one format; only text is styled.
 * @param width characters a line of text may have
 */
export const lintReport = (format: LintFormat, report: LintReport, style: Style, width = 80): string =>
  writers[format](report, style, width);
