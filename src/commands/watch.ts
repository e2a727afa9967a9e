/** `carcase lint --watch`: lints again what changes, until Ctrl-C. */
import { type Dirent, type FSWatcher, readdirSync, statSync, watch } from "node:fs";
import { basename, dirname, join, relative, resolve } from "node:path";
import { kindOf, sameFile } from "../cases/files/file-kind.ts";
import { roleOf } from "../cases/files/find.ts";
import { isYaml, skippedFolders } from "../cases/files/walk.ts";
import { count, listing } from "../words/listing.ts";
import { visible } from "../words/visible.ts";
import { affectedFolders, isRead, type Part } from "./affected.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

/** So long, in milliseconds, one save may take; several files that are saved together are one change. */
const together = 200;

/** Of more files than this a block names the first. */
const mostNamed = 3;

/**
 * Ends with Ctrl-C. Each folder is watched by itself: watching a tree at once, Node 20 loses a file that was replaced by
 * renaming, as most editors save.
 * @param lint called with what is to be linted again
 */
export function watchRecords(run: Run, lint: (part: Part) => Promise<unknown>): Promise<void> {
  const watched = new Map<string, { readonly watcher: FSWatcher; readonly inode: number }>();
  const changed = new Set<string>();
  let timer: NodeJS.Timeout | undefined;
  let isLinting = false;
  let failed: (why: unknown) => void = () => undefined;

  const close = (folder: string): void => {
    watched.get(folder)?.watcher.close();
    watched.delete(folder);
  };
  const noted = (file: string): void => {
    changed.add(file);
    timer ??= setTimeout(() => void answer(), together);
  };
  const open = (): void => {
    const folders = foldersOf(run.paths);
    for (const folder of watched.keys()) if (!folders.has(folder)) close(folder);
    for (const [folder, inode] of folders) {
      if (watched.get(folder)?.inode === inode) continue;
      close(folder);
      const watcher = watching(folder, (name) => noted(join(folder, name)));
      if (watcher === undefined) continue;
      watcher.on("error", () => close(folder));
      watched.set(folder, { watcher, inode });
    }
  };
  const closeAll = (): void => {
    for (const folder of [...watched.keys()]) close(folder);
    clearTimeout(timer);
  };
  const answer = async (): Promise<void> => {
    timer = undefined;
    if (isLinting) return;
    const files = [...changed].filter((file) => isOfInterest(file) || watched.has(file)).sort();
    changed.clear();
    isLinting = true;
    try {
      const folders = files.filter((file) => kindOf(file) === "folder");
      // A folder that is gone takes its visit with it.
      const gone = files.filter((file) => watched.has(file) && !folders.includes(file));
      open();
      const within = [...affectedFolders([...files, ...gone.map(visitIn)]), ...folders].map(sameFile);
      // What the other pigs of the visit lack is counted and not shown at each save.
      const isOfPigs = files.every((file) => isYaml(file) && roleOf(file) === "other");
      if (within.length > 0) {
        run.write(`${blockTitle(files)}\n`);
        await lint(isOfPigs ? { within, shown: files } : { within });
        run.write("\n");
      }
    } catch (error) {
      if (error instanceof UsageError) run.say(error.message);
      else failed(error);
    }
    isLinting = false;
    if (changed.size > 0) noted([...changed][0] ?? ".");
  };
  return new Promise<void>((done, fail) => {
    failed = fail;
    process.once("SIGINT", done);
    try {
      open();
      run.say(`${count(watched.size, "folder")} watched; Ctrl-C ends`);
    } catch (error) {
      fail(error);
    }
  }).finally(closeAll);
}

const visitIn = (folder: string): string => join(folder, "visit.yaml");

/** Files that editors write beside a record are none. */
function isOfInterest(file: string): boolean {
  return isRead(file) || (!basename(file).startsWith(".") && kindOf(file) === "folder");
}

/** `14:03:22 alder-farm/2026-03-14/pig-03.yaml` */
function blockTitle(files: readonly string[]): string {
  const names = files.map((file) => visible(relative(".", file) || "."));
  const shown =
    names.length > mostNamed ? [...names.slice(0, mostNamed), `${names.length - mostNamed} more`] : names;
  return `${new Date().toTimeString().slice(0, 8)} ${listing(shown, "and")}`;
}

/** The folders of some paths, what lies in them, and those above in which settings and farms may stand, with their inodes. */
function foldersOf(paths: readonly string[]): Map<string, number> {
  const found = new Map<string, number>();
  const add = (folder: string): boolean => {
    const status = statSync(folder, { throwIfNoEntry: false });
    if (status?.isDirectory() !== true || found.has(folder)) return false;
    found.set(folder, status.ino);
    return true;
  };
  const below = (folder: string): void => {
    if (!add(folder)) return;
    for (const { name } of foldersIn(folder))
      if (!name.startsWith(".") && !skippedFolders.has(name)) below(join(folder, name));
  };
  for (const path of paths) {
    // Of a pattern, the folder in which it begins.
    const start = kindOf(path) === "nothing" ? dirname(path.replace(/[*?[{(!].*/s, "x")) : path;
    const folder = sameFile(resolve(kindOf(start) === "folder" ? start : dirname(start)));
    if (kindOf(start) === "folder") below(folder);
    else add(folder);
    for (let at = folder; kindOf(join(at, ".git")) === "nothing" && dirname(at) !== at; at = dirname(at))
      if (standAbove.some((name) => kindOf(join(dirname(at), name)) === "file")) add(dirname(at));
  }
  return found;
}

/** None where nobody may look, or that is just gone. */
function foldersIn(folder: string): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  } catch {
    return [];
  }
}

/** @returns undefined for a folder that is just gone @throws UsageError where the system watches no more */
function watching(folder: string, told: (name: string) => void): FSWatcher | undefined {
  try {
    return watch(folder, (_, name) => told(name ?? "."));
  } catch (error) {
    const { code = "unknown reason" } = error as NodeJS.ErrnoException;
    if (code === "ENOENT" || code === "EACCES") return undefined;
    throw new UsageError(`--watch: the system watches no more folders (${code}); name fewer of them`);
  }
}

const standAbove = ["carcase.yaml", "farm.yaml", "visit.yaml"];
