/** `carcase agree`: do two readers score alike? */
import { isUtf8 } from "node:buffer";
import {
  type AgreeReport,
  agree as agreeOf,
  caseReadings,
  type Reading,
  ReadingError,
  tableReadings,
} from "../agree/index.ts";
import { isOwnStream, mostBytes, readInput } from "../cases/files/input.ts";
import { Repository } from "../cases/files/repository.ts";
import { notShown } from "../cases/index.ts";
import { agreeCsv } from "../formats/agree/csv.ts";
import { agreeJson } from "../formats/agree/json.ts";
import { agreeText } from "../formats/agree/text.ts";
import type { Scale } from "../knowledge/index.ts";
import { scales as shipped } from "../knowledge/scales.ts";
import { listing } from "../words/listing.ts";
import type { CommonOptions } from "./options.ts";
import { asUsage, confidence, ids } from "./parsers.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export interface AgreeOptions extends CommonOptions {
  readonly scale?: string;
  readonly level?: string;
}

type AgreeRun = Run<AgreeOptions>;

interface Found {
  readonly readings: readonly Reading[];
  readonly own: ReadonlyMap<string, Scale>;
}

export async function agree(run: AgreeRun): Promise<number> {
  const written = run.format<(report: AgreeReport) => string>({
    text: (report) => agreeText(report, run.style),
    json: agreeJson,
    csv: agreeCsv,
  });
  const level = confidence(run.options.level);
  const { scales } = ids("scales", "--scale", run.options.scale);
  const tables = run.paths.filter(isTable);
  const others = run.paths.filter((path) => !isTable(path));
  const found = [
    ...(tables.length === 0 ? [] : [fromTables(tables, run)]),
    ...(others.length === 0 ? [] : [await fromCases(others, run)]),
  ];
  const scaleOf = (id: string) => shipped.get(id) ?? found.flatMap(({ own }) => own.get(id) ?? [])[0];
  const readings = chosen(
    found.flatMap((one) => one.readings),
    scales,
  );
  run.write(written(asUsage("agree", () => agreeOf(readings, scaleOf, level))));
  return run.end();
}

/** What a shell makes of `<(…)` is a table as well: a case comes by its file, or from standard input. */
const isTable = (path: string): boolean => /\.csv$/i.test(path) || isOwnStream(path);

/** Readings of the scales asked for; of all when none was named. */
function chosen(readings: readonly Reading[], scales: readonly string[] | undefined): readonly Reading[] {
  if (scales === undefined) return readings;
  const read = [...new Set(readings.map(({ scale }) => scale))];
  const missing = scales.find((id) => !read.includes(id));
  if (missing !== undefined)
    throw new UsageError(
      `--scale: there is no reading on a scale "${missing}"; ${read.length === 0 ? "there are none at all" : `there are readings on ${listing(read)}`}`,
    );
  return readings.filter(({ scale }) => scales.includes(scale));
}

/** Tables name scales that ship, or those of the practice that the settings of the current folder name. */
function fromTables(files: readonly string[], run: AgreeRun): Found {
  const { scales, unreadable } = run.settings();
  run.faults([...unreadable, ...scales.flatMap((one) => one.faults)]);
  const own = new Map(scales.flatMap(({ scale }) => (scale === undefined ? [] : [[scale.id, scale]])));
  const known = [...shipped.keys(), ...own.keys()];
  const readings = [...files].sort().flatMap((file) => asUsage("agree", () => readingsIn(file, known)));
  return { readings, own };
}

function readingsIn(file: string, known: readonly string[]): Reading[] {
  const read = readInput(file, mostBytes, { streams: true });
  if (!read.ok) throw new UsageError(`"${file}" cannot be read: ${read.message}`);
  if (!isUtf8(read.bytes)) throw new UsageError(`"${file}" is no UTF-8 text; save the table as CSV UTF-8`);
  try {
    return tableReadings(file, read.bytes.toString("utf8"), known);
  } catch (error) {
    const isShown = isOwnStream(file) || new Repository(".", [file]).holds(file);
    if (isShown || !(error instanceof ReadingError)) throw error;
    throw new ReadingError(`${file}: the table does not fit (${notShown})`);
  }
}

async function fromCases(paths: readonly string[], run: AgreeRun): Promise<Found> {
  const archive = await run.countable(paths);
  const own = new Map(archive.cases.flatMap(({ settings }) => [...settings.houseScales]));
  return { readings: asUsage("agree", () => caseReadings(archive)), own };
}
