/** `carcase git`: git calls carcase for records, where two people's work meets and where it shows a difference. */
import { existsSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { readInput } from "../cases/files/input.ts";
import { factLines, readVersion } from "../history/index.ts";
import { visible } from "../words/visible.ts";
import { type Git, gitFor, runGit } from "./git.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

/** What stands in .gitattributes: it goes with the archive, while the settings belong to each copy of it. */
const attributes = ["*.yaml merge=carcase diff=carcase", "*.yml merge=carcase diff=carcase"];

const settings: readonly (readonly [key: string, value: string])[] = [
  ["merge.carcase.name", "records, part by part"],
  ["merge.carcase.driver", "carcase merge-driver %O %A %B %L %P"],
  ["diff.carcase.textconv", "carcase git facts"],
];

const repository = (): Git => gitFor("carcase git", "run it in the archive, after git init");

export function enable(run: Run<CommonOptions>): number {
  const git = repository();
  const added = writeAttributes(run, git, (lines) => [
    ...lines,
    ...attributes.filter((line) => !lines.includes(line)),
  ]);
  for (const [key, value] of settings) git.asked(["config", "--local", key, value]);
  run.write(
    `git merges records part by part, and shows differences of them in words.\n${added ? ".gitattributes says so; commit it.\n" : ""}Each copy of the archive needs carcase git enable once.\n`,
  );
  if (!isOnPath())
    run.say(
      "git calls the program by its name, carcase, and it is not on the path; npm run install:global puts it there",
    );
  return run.end();
}

export function disable(run: Run<CommonOptions>): number {
  const git = repository();
  writeAttributes(run, git, (lines) => lines.filter((line) => !attributes.includes(line)));
  for (const section of ["merge.carcase", "diff.carcase"])
    runGit(["config", "--local", "--remove-section", section]);
  run.write("git merges and shows records line by line again.\n");
  return run.end();
}

/** @returns whether anything was to be written; other lines stay as they are */
function writeAttributes(
  run: Run,
  git: Git,
  change: (lines: readonly string[]) => readonly string[],
): boolean {
  const file = join(git.top, ".gitattributes");
  const before = existsSync(file) ? readFileSync(file, "utf8") : "";
  const lines = before === "" ? [] : before.replace(/\n$/, "").split("\n");
  const after = change(lines);
  if (after.join("\n") === lines.join("\n")) return false;
  run.replace(file, after.map((line) => `${line}\n`).join(""), (there) =>
    (there?.toString() ?? "") === before ? undefined : `${file} was changed by somebody else meanwhile`,
  );
  return true;
}

const isOnPath = (): boolean =>
  (process.env.PATH ?? "")
    .split(delimiter)
    .some((folder) => ["carcase", "carcase.cmd"].some((name) => existsSync(join(folder, name))));

/** A line a fact, for git to set against each other; what is no record is given as it is. */
export function facts(run: Run<CommonOptions>): number {
  const [file = ""] = run.paths;
  const read = readInput(file);
  if (!read.ok) throw new UsageError(`${file}: ${read.message}`);
  const version = readVersion(file, read.bytes);
  run.write(
    "version" in version
      ? factLines(version.version.kind, version.version.record)
          .map((line) => `${visible(line)}\n`)
          .join("")
      : read.bytes.toString(),
  );
  return run.end();
}
