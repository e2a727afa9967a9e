/** `carcase show`: a pig on one screen. */
import type { Case } from "../cases/index.ts";
import { toJson } from "../formats/page/json.ts";
import { showText } from "../formats/show/text.ts";
import { makeReport, type ReportResult } from "../report/index.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { version } from "./version.ts";

/** The alarm notice stands above it; a pig with an alarm is shown nevertheless, for somebody must see why. */
export function show(run: Run<CommonOptions>): number {
  const shown = run.format<(report: ReportResult, one: Case) => string>({
    text: (report, one) => showText(one, report, run.style, run.width),
    json: (report) => toJson(report.pigs[0]),
  });
  const archive = run.archive();
  const texts = archive.cases.map((one) => {
    const report = makeReport({ ...archive, cases: [one] }, { version, files: [] });
    return shown(report, one);
  });
  if (texts.length > 0) run.write(texts.join("\n"));
  return run.end();
}
