/** The linter's result in every format it is asked for in. */
import { lintGithub } from "./lint-github.ts";
import { lintGitlab } from "./lint-gitlab.ts";
import { lintJson } from "./lint-json.ts";
import { lintJunit } from "./lint-junit.ts";
import type { LintReport } from "./lint-report.ts";
import { lintSarif } from "./lint-sarif.ts";
import { lintText } from "./lint-text.ts";
import type { Style } from "./style.ts";

export const lintFormats = ["text", "json", "sarif", "junit", "github", "gitlab"] as const;
export type LintFormat = (typeof lintFormats)[number];

const writers: Record<LintFormat, (report: LintReport, style: Style) => string> = {
  text: ({ result, quiet, only }, style) => lintText(result, { style, quiet, ...(only && { only }) }),
  json: ({ result, unreadable }) => lintJson(result, unreadable),
  sarif: lintSarif,
  junit: lintJunit,
  github: lintGithub,
  gitlab: ({ result, unreadable }) => lintGitlab(result, unreadable),
};

/** The report in one format; only text is styled. */
export const lintReport = (format: LintFormat, report: LintReport, style: Style): string =>
  writers[format](report, style);
