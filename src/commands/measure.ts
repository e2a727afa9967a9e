/** `carcase measure`: areas, perimeters and ratios from tracings; with --write, back into the cases that name them. */
import { readFileSync } from "node:fs";
import { readText } from "../cases/files/read-text.ts";
import { withMeasured } from "../fix/index.ts";
import { measureCsv } from "../formats/measure/csv.ts";
import { measureJson } from "../formats/measure/json.ts";
import { measureProblems } from "../formats/measure/problems.ts";
import { measureText } from "../formats/measure/text.ts";
import { type Measurements, measureAll, measuredRecord } from "../measure/index.ts";
import { writeDiff } from "./fix.ts";
import type { CommonOptions } from "./options.ts";
import type { Change, Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export interface MeasureOptions extends CommonOptions {
  readonly write?: true;
  readonly dryRun?: true;
}

/** Files that are measured themselves, pictures with them: they are told what they lack. */
const tracingFile = /\.(svg|svgz|json|geojson|png|jpe?g|tiff?|gif|bmp|webp|heic|pdf)$/i;

export function measure(run: Run<MeasureOptions>): number {
  const { format, quiet, write, dryRun } = run.options;
  const written = run.format<(measured: Measurements) => string>({
    text: (measured) => measureText(measured, run.style, quiet !== true),
    json: measureJson,
    csv: measureCsv,
  });
  const files = run.paths.filter((path) => tracingFile.test(path));
  const rest = run.paths.filter((path) => !tracingFile.test(path));
  checkWriting(files, rest, run.options);
  const cases = rest.length === 0 ? [] : run.soundArchive(rest).cases;
  const measured = measureAll(files, cases);
  run.complain(measureProblems(measured, run.spoken));
  const nothing = measured.measurements.length + measured.problems.length === 0;
  if (nothing && !run.failed && !quiet)
    run.say(
      "no case here names a tracing; write respiratory.turbinates.tracing or respiratory.lungs.tracing",
    );
  const result = written(measured);
  if (write) {
    const changed = changedCases(measured);
    if (dryRun) return writeDiff(changed, run);
    for (const one of run.output) run.checkResult(one, result);
    for (const one of changed)
      if (run.rewrite(one) && !quiet) run.say(`wrote what was measured into ${one.file}`);
  }
  if (!nothing || format !== "text") run.write(result);
  return run.end();
}

function checkWriting(
  files: readonly string[],
  rest: readonly string[],
  { write, dryRun }: MeasureOptions,
): void {
  if (dryRun && !write) throw new UsageError("--dry-run goes with --write");
  if (!write) return;
  if (files.length > 0)
    throw new UsageError(
      `--write: name the cases to write into, not the tracing ${files[0]}; each case says which tracing is its own`,
    );
  if (rest.includes("-"))
    throw new UsageError("--write: a case from standard input cannot be written back in place");
}

/** The byte order mark of a file stays. */
const mark = "\ufeff";

/**
 * The texts of cases with what was measured in them; cases in which nothing changes are left out.
 * @throws UsageError when an entry cannot be written safely; nothing is written then
 */
function changedCases({ measurements }: Measurements): Change[] {
  const texts = new Map<string, Change>();
  for (const { owner, ...measurement } of measurements) {
    if (owner === null) continue;
    const { file, organ, path } = owner;
    const known = texts.get(file) ?? textOf(file);
    const record = measuredRecord(measurement.tracing, measurement, organ);
    const written = withMeasured(known.after, path, record);
    if (!written.ok)
      throw new UsageError(
        `--write: ${file}: ${written.why}. Nothing was written; write by hand, below tracing: ${written.entry}`,
      );
    texts.set(file, { ...known, after: written.text });
  }
  return [...texts.values()]
    .filter(({ before, after }) => before !== after)
    .map(({ file, before, after }) => {
      const bom = readFileSync(file, "utf8").startsWith(mark) ? mark : "";
      return { file, before: bom + before, after: bom + after };
    });
}

function textOf(file: string): Change {
  const read = readText(file);
  if (!read.ok) throw new UsageError(`--write: ${file} cannot be read any more`);
  return { file, before: read.text, after: read.text };
}
