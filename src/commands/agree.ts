/** `carcase agree`: do two readers score alike? */
import { readFileSync } from "node:fs";
import { type AgreeReport, agree, caseReadings, type Reading, tableReadings } from "../agree/index.ts";
import { readSettings } from "../cases/index.ts";
import { agreeCsv } from "../formats/agree/csv.ts";
import { agreeJson } from "../formats/agree/json.ts";
import { agreeText } from "../formats/agree/text.ts";
import { faultsText } from "../formats/faults-text.ts";
import type { Scale } from "../knowledge/index.ts";
import { scales as shipped } from "../knowledge/scales.ts";
import { listing } from "../words/listing.ts";
import { asUsage, idList } from "./lists.ts";
import { openShare } from "./numbers.ts";
import { chosenFormat, openArchive } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { countable } from "./sound-cases.ts";
import { resultStyle, styleFor, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface AgreeOptions extends CommonOptions {
  readonly scale?: string;
  readonly level?: string;
}

interface Found {
  readonly readings: readonly Reading[];
  readonly own: ReadonlyMap<string, Scale>;
  readonly failed: boolean;
}

export async function runAgree(paths: readonly string[], options: AgreeOptions): Promise<number> {
  const format = chosenFormat(options, ["text", "json", "csv"]);
  const level = options.level === undefined ? {} : { level: openShare("--level", options.level) };
  const asked = idList("scales", options.scale, "--scale");
  const tables = paths.filter(isTable);
  const others = paths.filter((path) => !isTable(path));
  const found = [
    ...(tables.length === 0 ? [] : [fromTables(tables, options)]),
    ...(others.length === 0 ? [] : [await fromCases(others, options)]),
  ];
  const scaleOf = (id: string) => shipped.get(id) ?? found.flatMap(({ own }) => own.get(id) ?? [])[0];
  const readings = chosen(
    found.flatMap((one) => one.readings),
    asked.scales,
  );
  const report = asUsage("agree", () => agree(readings, scaleOf, level));
  writeResult(written(format, report, options), options);
  return found.some(({ failed }) => failed) ? 2 : 0;
}

function written(format: "text" | "json" | "csv", report: AgreeReport, options: AgreeOptions): string {
  if (format === "json") return agreeJson(report);
  return format === "csv" ? agreeCsv(report) : agreeText(report, resultStyle(options));
}

const isTable = (path: string): boolean => /\.csv$/i.test(path);

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
function fromTables(files: readonly string[], options: AgreeOptions): Found {
  const { scales, unreadable } = readSettings(".", options.config);
  const faults = [...unreadable, ...scales.flatMap((one) => one.faults)];
  process.stderr.write(faultsText(faults, styleFor(process.stderr, options)));
  const own = new Map(scales.flatMap(({ scale }) => (scale === undefined ? [] : [[scale.id, scale]])));
  const known = [...shipped.keys(), ...own.keys()];
  const readings = files.flatMap((file) => asUsage("agree", () => tableReadings(file, textOf(file), known)));
  return { readings, own, failed: faults.length > 0 };
}

function textOf(file: string): string {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code;
    throw new UsageError(
      code === "ENOENT" ? `there is no file "${file}"` : `"${file}" cannot be read (${code ?? fault})`,
    );
  }
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new UsageError(`"${file}" is no UTF-8 text; save the table as CSV UTF-8`);
  }
}

async function fromCases(paths: readonly string[], options: AgreeOptions): Promise<Found> {
  const { archive, failed } = await countable(openArchive(paths, options), options);
  const own = new Map(archive.cases.flatMap(({ settings }) => [...settings.houseScales]));
  return { readings: asUsage("agree", () => caseReadings(archive)), own, failed };
}
