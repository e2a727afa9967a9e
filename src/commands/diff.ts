/** `carcase diff`: what changed in records from one state to another, in medical words. */
import { lstatSync } from "node:fs";
import { devNull } from "node:os";
import { join, relative, resolve } from "node:path";
import { fileFault } from "../cases/faults/fault.ts";
import { kindOf, sameFile } from "../cases/files/file-kind.ts";
import { readInput } from "../cases/files/input.ts";
import { maxBytes } from "../cases/files/read-text.ts";
import { isInside } from "../cases/files/shown-paths.ts";
import type { Differences } from "../formats/history/blocks.ts";
import { differencesJson, differencesMarkdown, differencesText } from "../formats/history/text.ts";
import { type RecordVersion, readVersion, recordChanges } from "../history/index.ts";
import { withFilesOfNames } from "./case-names.ts";
import { type Git, gitFor, type RawChange, rawChanges } from "./git.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

interface DiffOptions extends CommonOptions {
  readonly files?: true;
}

export function diff(run: Run<DiffOptions>): number {
  const shown = run.format<(found: Differences) => string>({
    text: (found) => differencesText(found, run.style, run.width, run.options.quiet === true),
    markdown: differencesMarkdown,
    json: differencesJson,
  });
  run.write(shown(run.options.files ? betweenFiles(run) : betweenRevisions(run)));
  return run.end();
}

/** Two files, wherever they lie: what a difftool calls. */
function betweenFiles(run: Run<DiffOptions>): Differences {
  const [from, to] = run.paths;
  if (from === undefined || to === undefined || run.paths.length > 2)
    throw new UsageError("--files: name two files, the earlier and the later: carcase diff --files OLD NEW");
  const sides = new Sides(run);
  const name = isNoFile(to) ? from : to;
  for (const [side, file] of [[sides.before, from] as const, [sides.after, to] as const])
    if (!isNoFile(file)) sides.put(side, name, bytesOf(file));
  return { from, to, ...sides.found() };
}

/** What git calls a file that is new or gone. */
const isNoFile = (file: string): boolean => file === "/dev/null" || file === devNull;

function betweenRevisions(run: Run<DiffOptions>): Differences {
  const git = gitFor("carcase diff", "carcase diff --files OLD NEW compares two files");
  const { revisions, paths } = argumentsOf(run.paths, git);
  const [from, to] = revisions;
  const before = commitOf(git, from ?? "HEAD");
  const after = to === undefined ? undefined : commitOf(git, to);
  const within = withFilesOfNames(paths).map((path) => relative(git.top, placeOf(path)));
  const isAsked = (name: string): boolean =>
    isYaml(name) && (within.length === 0 || within.some((one) => isInside(relative(one, name))));
  const sides = new Sides(run);
  sides.read(
    git,
    changesBetween(git, before, after).filter(({ name }) => isAsked(name)),
  );
  return { from: from ?? "the last commit", to: to ?? null, ...sides.found() };
}

/** A path that is no more has no name but the one that was typed. */
export const placeOf = (path: string): string =>
  kindOf(path) === "nothing" ? join(sameFile("."), relative(resolve("."), resolve(path))) : sameFile(path);

export const isYaml = (name: string): boolean => /\.ya?ml$/i.test(name);

/** @param after undefined for the folder as it is, with files that git does not know yet */
export function changesBetween(git: Git, before: string, after: string | undefined): RawChange[] {
  if (after !== undefined)
    return rawChanges(
      git.names("diff-tree", "-r", "--raw", "--no-renames", "--no-abbrev", before, after, "--"),
    );
  const untracked = git.names("ls-files", "--others", "--exclude-standard").filter((name) => isYaml(name));
  return [
    ...rawChanges(git.names("diff-index", "--raw", "--no-renames", "--no-abbrev", before, "--")),
    ...untracked
      .filter((name) => lstatSync(join(git.top, name), { throwIfNoEntry: false })?.isFile() === true)
      .map((name) => ({ name, before: undefined, after: null })),
  ];
}

/** The records of both sides. A file that cannot be read is complained of, and is then on neither. */
export class Sides {
  readonly before: RecordVersion[] = [];
  readonly after: RecordVersion[] = [];
  readonly #others = new Set<string>();
  readonly #unread = new Set<string>();
  readonly #run: Run;

  constructor(run: Run) {
    this.#run = run;
  }

  read(git: Git, changes: readonly RawChange[]): void {
    const ids = changes
      .flatMap(({ before, after }) => [before, after])
      .filter((id) => typeof id === "string");
    const kept = git.objects(ids.filter((id) => !/^0+$/.test(id)));
    for (const { name, before, after } of changes) {
      const location = join(git.top, name);
      const file = relative(sameFile("."), location);
      if (before !== undefined) this.put(this.before, file, kept.get(before));
      if (after !== undefined)
        this.put(this.after, file, after === null ? bytesOf(location) : kept.get(after));
    }
  }

  put(side: RecordVersion[], file: string, bytes: Uint8Array | string | undefined): void {
    if (bytes === undefined) return;
    if (typeof bytes === "string") {
      this.#unread.add(file);
      this.#run.faults([fileFault(file, bytes)]);
      return;
    }
    const read = readVersion(file, bytes);
    if ("version" in read) side.push(read.version);
    else if ("other" in read) this.#others.add(file);
    else {
      const { message, ...place } = read.fault;
      this.#unread.add(file);
      const when = side === this.before ? "in its earlier state" : "in its later state";
      this.#run.faults([{ ...fileFault(file, `${message} (${when})`), ...place }]);
    }
  }

  found(): Pick<Differences, "records" | "others"> {
    const isRead = ({ file }: RecordVersion): boolean => !this.#unread.has(file);
    const records = recordChanges(this.before.filter(isRead), this.after.filter(isRead));
    return { records, others: [...this.#others] };
  }
}

/** What a file holds; a text says why it cannot be read. */
function bytesOf(location: string): Uint8Array | string {
  const read = readInput(location, maxBytes);
  return read.ok ? read.bytes : read.message;
}

/** @throws UsageError for what git does not know */
function commitOf(git: Git, name: string): string {
  const found = git.commit(name);
  if (found !== undefined) return found;
  throw new UsageError(
    name === "HEAD"
      ? "carcase diff: nothing is committed yet; git commit keeps a first state"
      : `carcase diff: "${name}" is no revision that git knows, such as HEAD~1 or main, no path and no case`,
  );
}

/** Up to two revisions come first, or one as `main..HEAD`; then paths and names of cases. */
function argumentsOf(given: readonly string[], git: Git) {
  const [first, second] = given;
  const [, from, to] = /^(.+?)\.\.(?!\.)(.+)$/.exec(first ?? "") ?? [];
  if (from !== undefined && to !== undefined && kindOf(first ?? "") === "nothing")
    return { revisions: [from, to], paths: given.slice(1) };
  const isRevision = (name: string | undefined): boolean => {
    if (name === undefined || git.commit(name) === undefined) return false;
    if (kindOf(name) === "nothing") return true;
    throw new UsageError(
      `carcase diff: "${name}" is a revision and a path; write refs/heads/${name} for the branch, ./${name} for the path`,
    );
  };
  const many = isRevision(first) ? (isRevision(second) ? 2 : 1) : 0;
  const paths = given.slice(many);
  const cases = withFilesOfNames(paths);
  const unknown = cases.find(
    (path, at) => path === paths[at] && kindOf(path) === "nothing" && !isKnown(git, path),
  );
  if (unknown !== undefined) commitOf(git, unknown);
  return { revisions: given.slice(0, many), paths };
}

/** Whether a path was there once: what was deleted can be asked for. */
const isKnown = (git: Git, path: string): boolean =>
  git.asked(
    ["rev-list", "-n", "1", "--all", "--", `:(top,literal)${relative(git.top, placeOf(path))}`],
    git.top,
  ) !== "";
