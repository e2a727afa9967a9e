/** Finds YAML files under paths, folders and globs; honours .gitignore; never runs in circles. */
import { readdirSync, readFileSync, realpathSync, statSync } from "node:fs";
import { basename, dirname, join, relative, resolve, sep } from "node:path";
import ignore, { type Ignore } from "ignore";
import { globSync, isDynamicPattern } from "tinyglobby";

/** What one path on the command line led to. */
export interface Found {
  readonly path: string;
  readonly files: readonly FoundFile[];
  readonly faults: readonly { readonly file: string; readonly message: string }[];
}

export interface FoundFile {
  readonly file: string;
  /** Named by the user, so read it whatever it looks like. */
  readonly named: boolean;
}

const skipped = new Set(["node_modules"]);
const isYaml = (name: string): boolean => /\.ya?ml$/i.test(name);

/** Follows one path, folder or glob, relative to a folder. Nothing found is an empty list, not an error. */
export function find(path: string, from: string): Found {
  const target = resolve(from, path);
  const kind = kindOf(target);
  if (kind === "file") return { path, files: [{ file: path, named: true }], faults: [] };
  if (kind === "folder") return walk(path, from);
  if (kind === "loop")
    return { path, files: [], faults: [{ file: path, message: "it is a link that leads back to itself" }] };
  if (!isDynamicPattern(path)) return { path, files: [], faults: [] };
  const matched = globSync(path, {
    cwd: from,
    onlyFiles: true,
    dot: false,
    expandDirectories: false,
    followSymbolicLinks: false,
  });
  return {
    path,
    files: matched
      .filter(isYaml)
      .sort()
      .map((file) => ({ file, named: true })),
    faults: [],
  };
}

function kindOf(target: string): "file" | "folder" | "loop" | "nothing" {
  try {
    return statSync(target).isDirectory() ? "folder" : "file";
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === "ELOOP") return "loop";
    if (code === "EACCES") return "file";
    return "nothing";
  }
}

interface Level {
  readonly folder: string;
  readonly rules: Ignore;
}

function walk(start: string, from: string): Found {
  const files: FoundFile[] = [];
  const faults: { file: string; message: string }[] = [];
  const show = (path: string): string => (start === "." ? path : join(start, path));

  const visit = (inside: string, levels: readonly Level[], parents: readonly string[]): void => {
    const folder = join(resolve(from, start), inside);
    let entries: ReturnType<typeof list>;
    let real: string;
    try {
      entries = list(folder);
      real = realpathSync(folder);
    } catch {
      faults.push({ file: show(inside), message: "no permission to look into this folder" });
      return;
    }
    if (parents.includes(real)) {
      faults.push({
        file: show(inside),
        message: "it is a link that leads back to a folder above it; it was not followed",
      });
      return;
    }
    const here = entries.includes(".gitignore") ? [...levels, ignoreLevel(folder)] : levels;
    for (const name of entries) {
      if (name.startsWith(".") || skipped.has(name)) continue;
      const path = join(inside, name);
      const kind = kindOf(join(folder, name));
      const isFolder = kind === "folder";
      if (isIgnored(join(folder, name), isFolder, here)) continue;
      if (isFolder) visit(path, here, [...parents, real]);
      else if (isYaml(name) && kind === "loop")
        faults.push({ file: show(path), message: "it is a link that leads back to itself" });
      else if (isYaml(name)) files.push({ file: show(path), named: false });
    }
  };
  visit("", levelsAbove(resolve(from, start)), []);
  return { path: start, files, faults };
}

const list = (folder: string): string[] => readdirSync(folder).sort();

function ignoreLevel(folder: string): Level {
  return { folder, rules: ignore().add(readFileSync(join(folder, ".gitignore"), "utf8")) };
}

/** The .gitignore files of the folders above, up to the one that holds .git. */
function levelsAbove(start: string): Level[] {
  const levels: Level[] = [];
  let folder = start;
  for (;;) {
    const names = namesIn(folder);
    if (folder !== start && names.includes(".gitignore")) levels.unshift(ignoreLevel(folder));
    const above = dirname(folder);
    if (names.includes(".git")) return levels;
    if (above === folder) return [];
    folder = above;
  }
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function isIgnored(path: string, isFolder: boolean, levels: readonly Level[]): boolean {
  return levels.reduce((ignored, { folder, rules }) => {
    const inside = relative(folder, path).split(sep).join("/");
    const result = rules.test(isFolder ? `${inside}/` : inside);
    return result.ignored || (ignored && !result.unignored);
  }, false);
}

/** Files with a fixed role, by name. */
export function roleOf(file: string): "visit" | "farm" | "settings" | "results" | "other" {
  const name = basename(file).replace(/\.yml$/i, ".yaml");
  if (name === "visit.yaml") return "visit";
  if (name === "farm.yaml") return "farm";
  if (name === "carcase.yaml") return "settings";
  if (name === "results.yaml") return "results";
  return "other";
}
