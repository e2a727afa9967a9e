/** Reads the cases a command was asked about, and says on standard error what could not be read. */
import { openAlarmsOf } from "../alarms/index.ts";
import { type Archive, type ReadOptions, readCases } from "../cases/index.ts";
import { alarmNotice } from "../formats/alarm-notice.ts";
import { faultsText } from "../formats/faults-text.ts";
import { holdNotice } from "./held-notice.ts";
import type { CommonOptions, OutputOptions } from "./options.ts";
import { readStandardInput } from "./read-stdin.ts";
import { styleFor } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface Opened {
  readonly archive: Archive;
  /** Whether something that was asked for could not be read or found; the exit code is then 2. */
  readonly failed: boolean;
}

/**
 * @param noticed whether the result shows the notice of open alarms itself, so that it is not said twice; it is held
 *   for the case that there will be no result
 */
export function openArchive(paths: readonly string[], options: CommonOptions, noticed = false): Opened {
  const archive = readCases(inputOnce(paths), readOptions(paths, options));
  const style = styleFor(process.stderr, options);
  const notice = (): string => alarmNotice(openAlarmsOf(archive), style);
  if (noticed) holdNotice(notice);
  else process.stderr.write(notice());
  process.stderr.write(faultsText(archive.unreadable, style));
  for (const path of archive.pathsWithoutCases)
    process.stderr.write(
      `carcase: no case at "${path}". A case is a .yaml file with keys such as case: and pig:.\n`,
    );
  return openedFrom(archive);
}

export const openedFrom = (archive: Archive): Opened => ({
  archive,
  failed: archive.unreadable.length > 0 || archive.pathsWithoutCases.length > 0,
});

/** Standard input can be read once, however often it is named. */
const inputOnce = (paths: readonly string[]): readonly string[] =>
  paths.filter((path, index) => path !== "-" || paths.indexOf("-") === index);

function readOptions(paths: readonly string[], options: CommonOptions): ReadOptions {
  const config = options.config === undefined ? {} : { config: options.config };
  if (!paths.includes("-")) {
    if (options.stdinFilename !== undefined)
      throw new UsageError("--stdin-filename goes with - among the paths, which reads standard input");
    return config;
  }
  return {
    ...config,
    input: { bytes: readStandardInput(), name: options.stdinFilename ?? "standard-input.yaml" },
  };
}

/** One of the formats a command knows. */
export function chosenFormat<Format extends string>(
  options: OutputOptions,
  known: readonly Format[],
): Format {
  const format = known.find((one) => one === options.format);
  if (format === undefined)
    throw new UsageError(`--format: there is no format "${options.format}"; there are ${known.join(", ")}`);
  return format;
}
