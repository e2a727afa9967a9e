/** `carcase log`: a case through its commits, newest first. */
import { join, relative, resolve } from "node:path";
import { sameFile } from "../cases/files/file-kind.ts";
import type { CaseLog, LogEntry } from "../formats/history/blocks.ts";
import { logJson, logMarkdown, logText } from "../formats/history/text.ts";
import { type RecordVersion, readVersion, recordChanges } from "../history/index.ts";
import { withFilesOfNames } from "./case-names.ts";
import { changesBetween, isYaml, placeOf, Sides } from "./diff.ts";
import { type Git, gitFor, rawChanges } from "./git.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export function log(run: Run<CommonOptions>): number {
  const shown = run.format<(found: CaseLog) => string>({
    text: (found) => logText(found, run.style, run.width),
    markdown: logMarkdown,
    json: logJson,
  });
  const git = gitFor("carcase log", "it reads the commits of an archive");
  const [file = ""] = withFilesOfNames(run.paths);
  const path = relative(git.top, placeOf(file)).replaceAll("\\", "/");
  const entries = [...uncommitted(run, git, path), ...committed(run, git, path)];
  if (entries.length === 0)
    throw new UsageError(
      `carcase log: "${file}" is in no commit; name a case by its name or its file, as it is or as it was`,
    );
  run.write(shown({ id: entries[0]?.record.id ?? file, file: relative(".", resolve(file)), entries }));
  return run.end();
}

/** What changed since the last commit. */
function uncommitted(run: Run, git: Git, path: string): LogEntry[] {
  const head = git.commit("HEAD");
  if (head === undefined) return [];
  const sides = new Sides(run);
  sides.read(
    git,
    changesBetween(git, head, undefined).filter(({ name }) => name === path),
  );
  return sides.found().records.map((record) => ({ commit: undefined, isMerge: false, record }));
}

interface Step {
  readonly commit: string;
  /** The commits before it in which the file was another one. */
  readonly parents: readonly string[];
  readonly path: string;
}

/** Every commit that changed the case, whatever its file was called then. */
function committed(run: Run, git: Git, path: string): LogEntry[] {
  const steps = stepsOf(git, "HEAD", path);
  const entries: LogEntry[] = [];
  for (let known = steps; known.length > 0; ) {
    entries.push(...entriesOf(run, git, known));
    const first = known.at(-1);
    const before = first === undefined ? undefined : cameFrom(git, first);
    if (before === undefined || first === undefined) break;
    // It did not begin there: it was moved.
    entries.pop();
    entries.push(...entriesOf(run, git, [{ ...first, parents: [before.commit] }], before));
    known = stepsOf(git, before.commit, before.path);
  }
  return entries;
}

function stepsOf(git: Git, from: string, path: string): Step[] {
  if (git.commit(from) === undefined) return [];
  return git
    .asked(["rev-list", "--topo-order", "--parents", from, "--", `:(top,literal)${path}`], git.top)
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => {
      const [commit = "", ...parents] = line.split(" ");
      return { commit, parents, path };
    });
}

/** @param before where the file lay before the only step */
function entriesOf(
  run: Run,
  git: Git,
  steps: readonly Step[],
  before?: { readonly path: string },
): LogEntry[] {
  const commits = git.commits(steps.map(({ commit }) => commit));
  const old = (parent: string, path: string): string => `${parent}:${before?.path ?? path}`;
  const objects = git.objects(
    steps.flatMap(({ commit, parents, path }) => [
      `${commit}:${path}`,
      ...parents.map((parent) => old(parent, path)),
    ]),
  );
  const versionOf = (name: string, path: string): RecordVersion[] => {
    const sides = new Sides(run);
    sides.put(sides.after, relative(sameFile("."), join(git.top, path)), objects.get(name));
    return sides.after;
  };
  return steps.flatMap(({ commit: id, parents, path }) => {
    const now = versionOf(`${id}:${path}`, path);
    const [first, ...others] = parents.map((parent) =>
      recordChanges(versionOf(old(parent, path), before?.path ?? path), now),
    );
    const [record] = first ?? recordChanges([], now);
    if (record === undefined) return [];
    const commit = commits.get(id);
    // A merge changed only what it took from neither side.
    const said = others.map(([other]) => new Set(other?.changes.map((change) => JSON.stringify(change))));
    const changes = record.changes.filter((change) =>
      said.every((known) => known.has(JSON.stringify(change))),
    );
    return [{ commit, isMerge: others.length > 0, record: { ...record, changes } }];
  });
}

/** The file of the same case that went in the commit in which this one came. */
function cameFrom(git: Git, { commit, path }: Step): { commit: string; path: string } | undefined {
  const idOf = (bytes: Buffer | undefined): string | undefined => {
    const read = bytes === undefined ? undefined : readVersion(path, bytes);
    return read !== undefined && "version" in read ? `${read.version.kind} ${read.version.id}` : undefined;
  };
  const id = idOf(git.objects([`${commit}:${path}`]).get(`${commit}:${path}`));
  const [, ...parents] = git.asked(["rev-list", "--parents", "-n", "1", commit], git.top).trim().split(" ");
  for (const parent of parents) {
    const gone = rawChanges(
      git.names(
        "diff-tree",
        "-r",
        "--raw",
        "--no-renames",
        "--no-abbrev",
        "--diff-filter=D",
        parent,
        commit,
        "--",
      ),
    ).filter(({ name }) => isYaml(name));
    const kept = git.objects(gone.flatMap(({ before }) => before ?? []));
    const same = gone.find(
      ({ before }) => before !== undefined && id !== undefined && idOf(kept.get(before)) === id,
    );
    if (same !== undefined) return { commit: parent, path: same.name };
  }
  return undefined;
}
