/** `carcase export`: what was recorded and worked out, as tidy tables that other programs open, with a data dictionary. */
import { randomBytes } from "node:crypto";
import { dirname, join, relative } from "node:path";
import { kindOf } from "../cases/files/file-kind.ts";
import { isInside } from "../cases/files/shown-paths.ts";
import {
  dictionary,
  dictionaryFile,
  exportFormats,
  isDictionary,
  type Piece,
  Pseudonyms,
  tables,
  type Written,
  writerOf,
} from "../tables/index.ts";
import { count } from "../words/listing.ts";
import { realTarget } from "./file-identity.ts";
import { readKey, writeKey } from "./key-file.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { type FoldersEnd, soundFolders } from "./sound-folders.ts";
import { UsageError } from "./usage-error.ts";
import { version } from "./version.ts";
import { FileKept, writeFolder } from "./write-file.ts";

export interface ExportOptions extends CommonOptions {
  readonly pseudonymise?: string;
  readonly newKey?: true;
  readonly keepDays?: true;
}

export async function exportTables(run: Run<ExportOptions>): Promise<number> {
  const { output, quiet, keepDays = false } = run.options;
  const format = run.format(
    Object.fromEntries(Object.keys(exportFormats).map((name) => [name, name])) as {
      [Name in keyof typeof exportFormats]: Name;
    },
  );
  if (output === undefined)
    throw new UsageError("export writes a folder of tables: name it, as in -o tables");
  const pseudonyms = pseudonymsFor(run, output);
  const writer = await writerOf(format);
  const shared = pseudonyms !== undefined;
  const writers = tables.map((table) => ({ table, to: writer(table, shared) }));
  const { paths, read } = run.reading();
  const counted = { cases: 0, visits: 0 };
  const told = (end: FoldersEnd): void => {
    run.wasRead(end);
    run.faults(end.leftOut);
    if (counted.cases === 0) throw new FileKept("there is no case to be exported; nothing was written");
  };
  const pieces = function* (): Iterable<Piece> {
    // In the order of their names, pigs and farms would tell which pseudonym is whose.
    for (const folder of soundFolders(paths, read, told, pseudonyms && ((at) => pseudonyms.rank(at)))) {
      counted.cases += folder.cases.length;
      if (folder.visit !== undefined) counted.visits++;
      const cases = pseudonyms?.shuffled(folder.cases, ({ id }) => id) ?? folder.cases;
      for (const { table, to } of writers) yield* to.add(table.rows({ ...folder, cases }, pseudonyms));
    }
    const written = new Map<(typeof tables)[number], Written>();
    for (const { table, to } of writers) {
      yield* to.end();
      const made = to.written();
      if (made !== undefined) written.set(table, made);
    }
    yield {
      name: dictionaryFile,
      text: dictionary({ written, version, shared: shared ? { keepDays } : undefined }),
    };
  };
  writeFolder(output, pieces(), {
    file: dictionaryFile,
    isOurs: (names, text) => names.every(isOurs) && isDictionary(text),
  });
  // Not before: what a killed run left may be the last tables that there are.
  run.clear([dirname(realTarget(output))]);
  if (quiet !== true)
    run.say(
      `${output}: ${count(counted.cases, "case")} of ${count(counted.visits, "visit")} in ${tables.length} tables (${format}); what each column means stands in ${join(output, dictionaryFile)}`,
    );
  return run.end();
}

const isOurs = (name: string): boolean =>
  name === dictionaryFile ||
  tables.some((table) => [table.name, `${table.name}.csv`, `${table.name}.ndjson`].includes(name));

/** @throws UsageError when there is no key, or it lies where whoever gets the tables would get it as well */
function pseudonymsFor({ paths, options }: Run<ExportOptions>, output: string): Pseudonyms | undefined {
  const { pseudonymise: file, newKey, keepDays = false } = options;
  if (file === undefined) {
    const alone = newKey ? "--new-key" : keepDays ? "--keep-days" : undefined;
    if (alone !== undefined) throw new UsageError(`${alone} goes with --pseudonymise and the file of a key`);
    return undefined;
  }
  const key = realTarget(file);
  const target = realTarget(output);
  const instead = "keep the key in a folder of its own that nobody gets, such as ~/keys/carcase.key";
  if (isInside(relative(target, key)) || dirname(target) === dirname(key))
    throw new UsageError(`--pseudonymise ${file}: that key would lie beside the tables; ${instead}`);
  const archive = paths.find(
    (path) => path !== "-" && kindOf(path) === "folder" && isInside(relative(realTarget(path), key)),
  );
  if (archive !== undefined)
    throw new UsageError(`--pseudonymise ${file}: that key would lie among the records; ${instead}`);
  if (newKey) writeKey(file, randomBytes(32).toString("hex"));
  return new Pseudonyms(readKey(file), { keepDays });
}
