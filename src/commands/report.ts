/** `carcase report`: what was found, how sure it is, whether it got better and what comes next, as a page to hand over. */
import { createHash } from "node:crypto";
import { openAlarmsOf } from "../alarms/index.ts";
import type { Archive } from "../cases/index.ts";
import { pageMark } from "../formats/page/html-page.ts";
import { toJson } from "../formats/page/json.ts";
import { portablePath } from "../formats/page/portable-path.ts";
import { reportHtml } from "../formats/report/html.ts";
import { type Audience, audiences, makeReport, type ReportResult, reportWords } from "../report/index.ts";
import { isLanguage, languages } from "../sheet/index.ts";
import { listing } from "../words/listing.ts";
import type { CommonOptions } from "./options.ts";
import { oneOf } from "./parsers.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";
import { version } from "./version.ts";

export interface ReportOptions extends CommonOptions {
  readonly for: string;
  readonly language: string;
}

export async function report(run: Run<ReportOptions>): Promise<number> {
  const { language, output, format } = run.options;
  const audience: Audience = oneOf("--for", run.options.for, audiences, "reader");
  if (!isLanguage(language))
    throw new UsageError(`--language: there is no "${language}"; write ${listing(languages, "or")}`);
  const written = run.format<(made: ReportResult) => string>({
    html: (made) => reportHtml(made, audience, reportWords(language)),
    json: (made) => toJson(made),
  });
  if (output === undefined && process.stdout.isTTY === true && format === "html")
    throw new UsageError("a report is a page: write -o report.html, and open that file in a browser");
  const archive = await run.countable();
  const alarms = openAlarmsOf(archive);
  if (alarms.length > 0) {
    run.say("no report while an alarm stands; record what the authority says, and write it then");
    return 1;
  }
  if (archive.cases.length > 0)
    run.write(written(makeReport(archive, { version, files: filesOf(archive) })), {
      sample: format === "html" ? pageMark("report") : '"report": 1',
      format,
    });
  return run.end();
}

/** Every file that the report rests on, with the digest of what was read. */
function filesOf({ cases, visits, farms }: Archive): ReportResult["files"] {
  const texts = new Map(
    [...farms, ...visits, ...cases].map(({ file, document }) => [portablePath(file), document.text]),
  );
  return [...texts]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([file, text]) => ({ file, sha256: createHash("sha256").update(text).digest("hex") }));
}
