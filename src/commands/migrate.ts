/** `carcase migrate`: files of an older format are written anew in the newest. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { FileKind } from "../cases/faults/validate.ts";
import { find, roleOf } from "../cases/files/find.ts";
import { currentFormat, formatOf, otherFormat } from "../cases/files/format-version.ts";
import { readText } from "../cases/files/read-text.ts";
import { Repository } from "../cases/files/repository.ts";
import { isProbablyOurs, whoseDocument } from "../cases/files/whose.ts";
import { isKeyed, type Keyed } from "../cases/model/path.ts";
import { parseYaml } from "../cases/yaml/parse-yaml.ts";
import { type Migration, migrateText, migrations as shipped, stepText } from "../migrate/index.ts";
import { count } from "../words/listing.ts";
import { visible } from "../words/visible.ts";
import { writeDiff } from "./fix.ts";
import type { CommonOptions } from "./options.ts";
import type { Change, Run } from "./run.ts";

export interface MigrateOptions extends CommonOptions {
  readonly dryRun?: true;
}

/** @param migrations those that are known; @param newest the format that they lead to */
export function migrate(
  run: Run<MigrateOptions>,
  migrations: readonly Migration[] = shipped,
  newest = currentFormat,
): number {
  const { dryRun, quiet } = run.options;
  const found = run.paths.map((path) => find(path, "."));
  for (const { path, files, faults } of found) {
    for (const { file, message } of faults) run.complain(`${visible(file)}: ${message}\n`);
    if (files.length + faults.length === 0) run.complain(`carcase: there is no file at "${visible(path)}"\n`);
  }
  const files = new Map(found.flatMap((one) => one.files).map(({ file }) => [resolve(file), file]));
  const repository = new Repository(".", run.paths);
  const all = [...files.values()].map((file) => migratedFile(file, { run, migrations, newest, repository }));
  const ours = all.filter((one) => one !== undefined);
  if (run.failed) {
    run.say("nothing was written; put right what is said above first");
    return run.end();
  }
  const changes = ours.filter((one) => one !== "newest");
  if (dryRun) return writeDiff(changes, run);
  const written = changes.filter((one) => run.rewrite(one));
  if (!quiet) sayMigrated(run, { written, newest, migrations, there: ours.length - changes.length });
  return run.end();
}

interface Migrating {
  readonly run: Run;
  readonly migrations: readonly Migration[];
  readonly newest: number;
  readonly repository: Repository;
}

interface MigratedFile extends Change {
  readonly isSealed: boolean;
}

/** @returns undefined for a file that is not ours, or of which was complained */
function migratedFile(
  file: string,
  { run, migrations, newest, repository }: Migrating,
): MigratedFile | "newest" | undefined {
  const refuse = (why: string, line = 0): undefined => {
    run.complain(`${visible(file)}${line === 0 ? "" : `:${line}`}: ${visible(why)}\n`);
    return undefined;
  };
  const read = readText(file);
  const parsed = read.ok ? parseYaml(read.text) : undefined;
  if (!read.ok || parsed?.ok !== true) {
    const isOurs = !read.ok || isProbablyOurs(read.text);
    return isOurs ? refuse("it cannot be read; carcase lint says why") : undefined;
  }
  const { value } = parsed.document;
  const kind = isKeyed(value) ? kindOf(file, value) : undefined;
  if (kind === undefined || !isKeyed(value)) return undefined;
  const format = formatOf(value);
  if (format === undefined) return refuse("it does not say its format; carcase lint says how", 1);
  if (format > newest) return refuse(otherFormat({ format }, newest) ?? "");
  if (format === newest) return "newest";
  if (!repository.holds(file)) return refuse("it lies outside the repository and is not written into");
  const migrated = migrateText(read.text, kind, migrations);
  if (migrated === undefined)
    return refuse(`of format ${format} this carcase knows no way to format ${newest}`);
  if ("step" in migrated)
    return refuse(
      `${stepText(migrated.step)}: the line is written in a way in which that cannot be done safely; do it by hand, or write the line more plainly`,
      migrated.line,
    );
  const bom = readFileSync(file, "utf8").startsWith(mark) ? mark : "";
  return { file, before: bom + read.text, after: bom + migrated.text, isSealed: value.seals !== undefined };
}

/** The byte order mark of a file stays. */
const mark = "\ufeff";

function kindOf(file: string, value: Keyed): FileKind | undefined {
  const role = roleOf(file);
  const isNamed = role !== "other" && formatOf(value) !== undefined;
  if (isNamed && role !== "results") return role;
  // Of a YAML file by any other name its keys decide.
  const whose = whoseDocument({ value });
  if (whose === "results" || whose === "a case") return whose === "results" ? "results" : "case";
  return whose === "ours beside cases" ? "scale" : undefined;
}

interface Told {
  readonly written: readonly MigratedFile[];
  readonly there: number;
  readonly newest: number;
  readonly migrations: readonly Migration[];
}

function sayMigrated(run: Run, { written, there, newest, migrations }: Told): void {
  const rest = `${count(there, "file is", "files are")} of format ${newest}, the newest that this carcase knows`;
  if (written.length === 0) {
    run.say(there === 0 ? "there is no file of ours" : `nothing to do: ${rest}`);
    return;
  }
  run.say(`${count(written.length, "file")} written anew in format ${newest}`);
  for (const { says } of migrations) run.say(says);
  const sealed = written.filter(({ isSealed }) => isSealed).length;
  if (sealed > 0)
    run.say(
      `${count(sealed, "sealed record")} among them: carcase seal --amend --by NAME --because "format ${newest}" signs them anew`,
    );
}
