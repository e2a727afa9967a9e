/** `carcase import`: a tally of many pigs as cases, and the empty table to fill in. */
import { lstatSync, statSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { openAlarmsOf } from "../alarms/index.ts";
import { readInput } from "../cases/files/input.ts";
import { readCases } from "../cases/index.ts";
import { unifiedDiff } from "../fix/index.ts";
import { alarmNotice } from "../formats/alarm-notice.ts";
import { importJson } from "../formats/import/json.ts";
import { proposalText } from "../formats/import/proposal.ts";
import { importText } from "../formats/import/text.ts";
import { csv } from "../formats/page/csv.ts";
import { emptyTable, proposal, readTally, TableFault, type Tally, type Unmapped } from "../tally/index.ts";
import { count } from "../words/listing.ts";
import type { CommonOptions } from "./options.ts";
import { asUsage, ids, whole } from "./parsers.ts";
import { pigFiles } from "./pig-files.ts";
import type { Run } from "./run.ts";
import { readStandardInput } from "./standard-input.ts";
import { speak } from "./streams.ts";
import { UsageError } from "./usage-error.ts";
import { folderForNew } from "./write-file.ts";

export interface ImportOptions extends CommonOptions {
  readonly write?: true;
  readonly visit?: string;
  readonly date?: string;
  readonly protocol?: string;
  readonly empty?: string;
  readonly columns?: string;
  readonly semicolons?: true;
}

/** A tally has some kilobytes, in UTF-16 twice as many. */
const mostBytes = 2 * 1024 * 1024;

export function importTable(run: Run<ImportOptions>): number {
  const { options } = run;
  const [table, named = "."] = run.paths;
  // Without a slash at its end.
  const folder = join(dirname(named), basename(named));
  if (options.empty !== undefined) return writeEmpty(options.empty, run);
  if (options.columns !== undefined || options.semicolons)
    throw new UsageError(`--${options.semicolons ? "semicolons" : "columns"} goes with --empty`);
  if (table === undefined)
    throw new UsageError("name the table, saved as CSV; or write --empty 30 for an empty one to fill in");
  checkWish(folder, options);
  const write = run.format<(tally: Tally) => string>({
    text: (tally) => importText(tally, { folder, written: options.write === true }, run.style, run.width),
    diff: ({ cases, visit }) =>
      [...(visit === undefined ? [] : [visit]), ...cases]
        .map(({ file, text }) => unifiedDiff(file, "", text).replace(/^--- .*/, "--- /dev/null"))
        .join(""),
    json: importJson,
  });
  const read = readOrTell(table, folder, run);
  if (read === undefined) return run.end();
  if ("unknown" in read) {
    run.faults(read.faults);
    run.write(proposalText(proposal(read.unknown), table), { format: "text" });
    return run.end();
  }
  speak(alarmNotice(openAlarmsOf({ visits: [], cases: read.drafts }), run.spoken, run.width));
  if (options.write) {
    for (const one of run.output) run.checkResult(one, samples[options.format]?.sample ?? write(read));
    const { cases, visit } = read;
    run.writeNew([...(visit === undefined ? [] : [visit]), ...cases], read.folder);
  }
  const isSilent = options.quiet && options.format === "text" && run.output.length === 0;
  if (!isSilent) run.write(write(read), samples[options.format] ?? {});
  return run.end();
}

/** What an earlier result is known by. */
const samples: Readonly<Record<string, { sample: string }>> = {
  diff: { sample: "--- /dev/null" },
};

const day = /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/;
const id = /^[A-Za-z0-9][A-Za-z0-9._-]{0,99}$/;

function checkWish(folder: string, { visit, date }: ImportOptions): void {
  if (/\.ya?ml$/i.test(folder) || lstatSync(folder, { throwIfNoEntry: false })?.isFile())
    throw new UsageError(`${folder}: name the folder of the visit, not a file`);
  if (date !== undefined && !day.test(date))
    throw new UsageError(`--date: "${date}" is no day; write the year first, such as 2026-03-14`);
  if (visit !== undefined && !id.test(visit))
    throw new UsageError(
      `--visit: "${visit}" is no name of a visit; write letters, digits, dots, hyphens or underscores, such as alder-2026-03-14`,
    );
}

function readOrTell(table: string, folder: string, run: Run<ImportOptions>): Tally | Unmapped | undefined {
  const { config, visit, date, protocol } = run.options;
  try {
    return readTally({
      file: table === "-" ? "standard input" : table,
      bytes: tableBytes(table),
      folder,
      config,
      visit,
      date,
      protocol,
      there: pigFiles(folder),
      folderFor: (numbers) => folderForNew(folder, numbers),
    });
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(error.message);
    if (!(error instanceof TableFault)) throw error;
    run.faults(error.faults);
    run.say("nothing was imported");
    return undefined;
  }
}

/** The bytes of a table, or of standard input for `-`. @throws UsageError where it cannot be read */
export function tableBytes(table: string): Buffer {
  if (table === "-") {
    const bytes = readStandardInput();
    if (bytes.length <= mostBytes) return bytes;
    throw new UsageError(`standard input: it is too large; ${mostBytes / 1024 / 1024} MB is the limit`);
  }
  const read = readInput(table, mostBytes, { streams: true });
  if (read.ok) return read.bytes;
  throw new UsageError(
    `${table}: ${read.message}${read.why === "folder" ? "; name the table, saved as CSV" : ""}`,
  );
}

/** For the visit of a folder, what it says for its cases is not asked, and the numbers go on from its last pig. */
function writeEmpty(pigs: string, run: Run<ImportOptions>): number {
  const { columns, semicolons, write, config } = run.options;
  const [folder, more] = run.paths;
  if (write) throw new UsageError("--empty prints a table; take --write out, and name a file with -o");
  if (more !== undefined) throw new UsageError("--empty takes no table; name the folder of the visit alone");
  const number = whole("--empty", pigs, 1, 2000);
  const first = folder === undefined ? 1 : lastPig(folder) + 1;
  const visit =
    folder === undefined ? undefined : readCases([folder], config === undefined ? {} : { config }).visits[0];
  const table = asUsage("--columns", () =>
    emptyTable({
      pigs: Array.from({ length: number }, (_, at) => first + at),
      ...ids("columns", "--columns", columns),
      defaults: visit?.record.defaults,
    }),
  );
  const text = csv(table.head, table.rows, semicolons ? ";" : ",");
  run.write(text, { format: "csv", sample: text });
  if (run.output.length > 0 && !run.options.quiet)
    run.say(`wrote an empty table for ${count(number, "pig")}`);
  return run.end();
}

/** The highest number of a pig in the folder. */
function lastPig(folder: string): number {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true)
    throw new UsageError(`${folder}: there is no such folder; name that of the visit, or none`);
  return Math.max(0, ...pigFiles(folder).keys());
}
