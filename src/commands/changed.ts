/** `carcase lint --changed` and `--staged`: the part of an archive that git knows to be changed. */
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { kindOf, sameFile } from "../cases/files/file-kind.ts";
import { affectedFolders, type Part } from "./affected.ts";
import { gitFor, runGit } from "./git.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export interface ChangedOptions {
  /** Since a revision, or true for the last commit. */
  readonly changed?: string | true;
  readonly staged?: true;
}

const records = [":(icase)*.yaml", ":(icase)*.yml", ":(glob)**/.gitignore"];

/**
 * Lints what was asked for: undefined stands for the whole archive.
 * @throws UsageError outside a repository, and for a revision that git does not know
 */
export async function withChanged<T>(
  run: Run<ChangedOptions & CommonOptions>,
  lint: (part?: Part) => Promise<T>,
): Promise<T> {
  const { changed, staged } = run.options;
  if (changed === undefined && staged === undefined) return lint();
  const git = changedGit(staged ? "--staged" : "--changed");
  if (changed !== undefined) {
    const revision = changed === true || git.takesPath(run, changed) ? undefined : changed;
    const since = revision === undefined ? git.commit("HEAD") : git.revision(revision);
    const held = since === undefined ? git.names("ls-files", "--cached") : git.diff(since);
    const files = [...held, ...git.names("ls-files", "--others", "--exclude-standard")];
    const nothing = `no record has changed since ${revision ?? "the last commit"}`;
    return lint({ within: affectedFolders(files.map((name) => join(git.top, name))), nothing });
  }
  // What is going to be committed need not be what lies in the folder.
  const copy = sameFile(mkdtempSync(join(tmpdir(), "carcase-staged-")));
  try {
    // No link leads out of a repository.
    mkdirSync(join(copy, ".git"));
    git.copy(git.names("ls-files", "--cached", "--", ...records), copy);
    const within = affectedFolders(git.diff("--cached").map((name) => join(copy, name)));
    const nothing = "no record is staged; git add stages what is to be committed";
    return await lint({ within, from: join(copy, relative(git.top, sameFile("."))), nothing });
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}

function changedGit(option: string) {
  const git = gitFor(option, `leave ${option} out to lint all cases`);
  const { top, asked, names, commit } = git;
  return {
    ...git,
    /** Paths that differ from a commit, those that are gone too: their visit is judged without them. */
    diff: (from: string) =>
      names("diff", "--name-only", "--no-renames", "--no-relative", "--no-ext-diff", from, "--"),
    /** What was typed behind --changed may be what is to be linted: `carcase lint --changed .` */
    takesPath: (lint: Run, name: string): boolean => {
      if (kindOf(name) === "nothing") return false;
      if (commit(name) !== undefined)
        throw new UsageError(
          `${option}: "${name}" is a revision and a path; write refs/heads/${name} for the branch, ./${name} for the path`,
        );
      lint.paths = [name, ...lint.paths.filter((path) => path !== ".")];
      return true;
    },
    /** Where the work of today left a revision. */
    revision: (name: string): string => {
      const found = commit(name);
      if (found === undefined)
        throw new UsageError(
          `${option}: "${name}" is no revision that git knows, such as HEAD~1 or main, and no path`,
        );
      const base = runGit(["merge-base", found, "HEAD"]);
      return base.status === 0 ? base.stdout.toString().trim() : found;
    },
    copy: (files: readonly string[], folder: string) =>
      asked(["checkout-index", "-z", "--stdin", `--prefix=${folder}/`], top, files.join("\0")),
  };
}
