/** Looks through a folder for YAML files; honours .gitignore; looks into each folder once, however many links lead there. */
import { type Dirent, readdirSync, realpathSync } from "node:fs";
import { dirname, join, resolve, sep } from "node:path";
import { kindOf, sameFile } from "./file-kind.ts";
import { type Beside, type Excluding, type Found, type FoundFile, isBeside } from "./found.ts";
import { isIgnored, type Level, levelsAbove, levelsIn } from "./ignore-rules.ts";

export const skippedFolders: ReadonlySet<string> = new Set(["node_modules"]);
export const isYaml = (name: string): boolean => /\.ya?ml$/i.test(name);

/** A folder still to be looked into. */
interface Task {
  /** Its path below the start. */
  readonly inside: string;
  readonly levels: readonly Level[];
  /** The real paths of the folders that led to it. */
  readonly parents: readonly string[];
}

/** @param start the folder, as it is shown; relative to `from`; @param beside is told what was seen */
export function walk(start: string, from: string, excluding: Excluding, beside: Beside): Found {
  const top = resolve(from, start);
  const files: FoundFile[] = [];
  const excluded: string[] = [];
  const faults: { file: string; message: string }[] = [];
  const seen = new Set<string>();
  const plain = new Set<string>();
  const linked = new Map<string, string>();
  const links: Task[] = [];
  let overruled: Level | undefined;
  const show = (inside: string): string => (start === "." ? inside || start : join(start, inside));

  const look = ({ inside, levels, parents }: Task): void => {
    const folder = join(top, inside);
    const entries = list(folder);
    if (entries === undefined) {
      faults.push({ file: show(inside), message: "no permission to look into this folder" });
      return;
    }
    const { inFolder, real } = entries;
    if (parents.includes(real)) {
      const message = "it is a link that leads back to a folder above it; it was not followed";
      faults.push({ file: show(inside), message });
      return;
    }
    if (seen.has(real)) return;
    seen.add(real);
    beside.set(folder, inFolder.map(({ name }) => name).filter(isBeside));
    const here = inFolder.some(({ name }) => name === ".gitignore")
      ? [...levels, ...levelsIn(folder)]
      : levels;
    const shown = show(inside);
    const settings = excluding(folder);
    const excludes = settings === undefined || settings === overruled ? [] : [settings];
    for (const entry of inFolder) {
      const { name } = entry;
      if (name.startsWith(".") || skippedFolders.has(name)) continue;
      const isRecord = isYaml(name);
      const path = below(inside, name);
      const location = below(folder, name);
      const link = entry.isSymbolicLink();
      const kind = link ? kindOf(location) : entry.isDirectory() ? "folder" : "file";
      if (isIgnored(location, kind === "folder", here)) continue;
      if (isIgnored(location, kind === "folder", excludes)) {
        if (kind !== "folder" && isRecord) excluded.push(show(path));
        continue;
      }
      if (kind === "folder" && !isRecord) {
        const task = { inside: path, levels: here, parents: [...parents, real] };
        // Links come last, so that a file is known by its own path and not by that of a link.
        if (link) links.push(task);
        else look(task);
      } else if (kind === "loop" && isRecord)
        faults.push({ file: show(path), message: "it is a link that leads back to itself" });
      else if (isRecord) {
        if (link) {
          if (!linked.has(sameFile(location))) linked.set(sameFile(location), show(path));
        } else {
          plain.add(below(real, name));
          files.push({ file: shown === "." ? name : below(shown, name), location, how: "walked" });
        }
      }
    }
  };

  // A folder that is asked for by name is looked into although git ignores it, or the settings exclude it.
  const above = levelsAbove(top);
  const around = excluding(dirname(top));
  overruled = around !== undefined && isIgnored(top, true, [around]) ? around : undefined;
  look({ inside: "", levels: isIgnored(top, true, above) ? [] : above, parents: [] });
  for (let link = links.shift(); link !== undefined; link = links.shift()) look(link);
  for (const [target, file] of linked) if (!plain.has(target)) files.push({ file, how: "walked" });
  files.sort((a, b) => (a.file < b.file ? -1 : 1));
  return { path: start, files, excluded, faults };
}

/** What `join` gives for a folder and a name, at once. */
const below = (folder: string, name: string): string =>
  folder === "" || folder.endsWith(sep) ? folder + name : folder + sep + name;

/** What lies in a folder, in a stable order, and its path without links; undefined when it cannot be read. */
function list(folder: string): { inFolder: readonly Dirent[]; real: string } | undefined {
  try {
    const inFolder = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
    return { inFolder, real: realpathSync.native(folder) };
  } catch {
    return undefined;
  }
}
