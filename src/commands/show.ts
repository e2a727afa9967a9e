/** `carcase show`: a pig on one screen. */
import type { Case } from "../cases/index.ts";
import { outputJson } from "../formats/page/json.ts";
import { showText } from "../formats/show/text.ts";
import { makeReport, type ReportResult } from "../report/index.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { version } from "./version.ts";

interface Shown {
  readonly one: Case;
  readonly report: ReportResult;
}

/** The alarm notice stands above it; a pig with an alarm is shown nevertheless, for somebody must see why. */
export function show(run: Run<CommonOptions>): number {
  const written = run.format<(pigs: readonly Shown[]) => string>({
    text: (pigs) => pigs.map(({ one, report }) => showText(one, report, run.style, run.width)).join("\n"),
    json: (pigs) => outputJson("show", 1, { pigs: pigs.flatMap(({ report }) => report.pigs) }),
  });
  const archive = run.archive();
  const pigs = archive.cases.map((one) => ({
    one,
    report: makeReport({ ...archive, cases: [one] }, { version, files: [] }),
  }));
  if (pigs.length > 0) run.write(written(pigs));
  return run.end();
}
