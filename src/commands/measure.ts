/** `carcase measure`: areas, perimeters and ratios from tracings; with --write, back into the cases that name them. */
import { readFileSync } from "node:fs";
import { readText } from "../cases/read-text.ts";
import { unifiedDiff, withMeasured } from "../fix/index.ts";
import { measureCsv } from "../formats/measure/csv.ts";
import { measureJson } from "../formats/measure/json.ts";
import { measureProblems } from "../formats/measure/problems.ts";
import { measureText } from "../formats/measure/text.ts";
import { type Measurements, measureAll, measuredRecord } from "../measure/index.ts";
import { chosenFormat, openArchive } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { withoutFormatFaults } from "./sound-cases.ts";
import { resultStyle, styleFor, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { checkWritable, writeWhole } from "./write-file.ts";

export interface MeasureOptions extends CommonOptions {
  readonly write?: true;
  readonly dryRun?: true;
}

/** Files that are measured themselves, pictures with them: they are told what they lack. */
const tracingFile = /\.(svg|svgz|json|geojson|png|jpe?g|tiff?|gif|bmp|webp|heic|pdf)$/i;

export function runMeasure(paths: readonly string[], options: MeasureOptions): number {
  const format = chosenFormat(options, ["text", "json", "csv"]);
  const files = paths.filter((path) => tracingFile.test(path));
  const rest = paths.filter((path) => !tracingFile.test(path));
  checkWriting(files, rest, options);
  const { archive, failed } =
    rest.length === 0
      ? { archive: undefined, failed: false }
      : withoutFormatFaults(openArchive(rest, options), options);
  const measured = measureAll(files, archive?.cases ?? []);
  process.stderr.write(measureProblems(measured, styleFor(process.stderr, options)));
  const exit = failed || measured.problems.length > 0 ? 2 : 0;
  const nothing = measured.measurements.length + measured.problems.length === 0;
  if (nothing && !failed && !options.quiet)
    process.stderr.write(
      "carcase: no case here names a tracing; write respiratory.turbinates.tracing or respiratory.lungs.tracing\n",
    );
  if (options.write) {
    const changed = changedCases(measured);
    if (options.dryRun) {
      writeResult(
        changed.map(({ file, before, after }) => unifiedDiff(file, before, after)).join(""),
        options,
      );
      return exit === 0 && changed.length > 0 ? 1 : exit;
    }
    if (options.output !== undefined) checkWritable(options.output);
    for (const { file, after } of changed) writeWhole(file, after);
    if (!options.quiet)
      for (const { file } of changed) process.stderr.write(`carcase: wrote what was measured into ${file}\n`);
  }
  if (format === "json") writeResult(measureJson(measured), options);
  else if (format === "csv") writeResult(measureCsv(measured), options);
  else if (!nothing)
    writeResult(measureText(measured, resultStyle(options), options.quiet !== true), options);
  return exit;
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

interface Changed {
  readonly file: string;
  readonly before: string;
  readonly after: string;
}

/** The byte order mark of a file stays. */
const mark = "\ufeff";

/**
 * The texts of cases with what was measured in them; cases in which nothing changes are left out.
 * @throws UsageError when an entry cannot be written safely; nothing is written then
 */
function changedCases({ measurements }: Measurements): Changed[] {
  const texts = new Map<string, Changed>();
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

function textOf(file: string): Changed {
  const read = readText(file);
  if (!read.ok) throw new UsageError(`--write: ${file} cannot be read any more`);
  return { file, before: read.text, after: read.text };
}
