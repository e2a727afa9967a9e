/** Finds YAML files under paths, folders and globs. */
import { createRequire } from "node:module";
import { basename, dirname, isAbsolute, resolve } from "node:path";
import type * as Globs from "tinyglobby";
import { isResultsName, kindOf } from "./file-kind.ts";
import type { Beside, Excluding, Found } from "./found.ts";
import { isIgnored, levelsAround } from "./ignore-rules.ts";
import { isYaml, skippedFolders, walk } from "./walk.ts";

/** Loaded when a path is none: most runs name files and folders. */
const globs = () => createRequire(import.meta.url)("tinyglobby") as typeof Globs;

/**
 * Follows one path, folder or glob, relative to a folder. What is named by itself is never excluded. Nothing found is an empty list, not an error.
 */
export function find(
  path: string,
  from: string,
  excluding: Excluding = () => undefined,
  beside: Beside = new Map(),
): Found {
  const nothing: Found = { path, files: [], excluded: [], faults: [] };
  if (path.trim() === "") return nothing;
  const kind = kindOf(resolve(from, path));
  if (kind === "file" || kind === "broken link") return { ...nothing, files: [{ file: path, how: "named" }] };
  if (kind === "folder") return walk(path, from, excluding, beside);
  if (kind === "loop")
    return { ...nothing, faults: [{ file: path, message: "it is a link that leads back to itself" }] };
  return globs().isDynamicPattern(path) ? { ...nothing, ...matching(path, from, excluding) } : nothing;
}

/** Files that match a pattern, but for those that git ignores. Folders named node_modules or .x are not looked into. */
function matching(pattern: string, from: string, excluding: Excluding): Pick<Found, "files" | "excluded"> {
  const all = globs()
    .globSync(pattern, {
      cwd: resolve(from),
      onlyFiles: true,
      dot: false,
      expandDirectories: false,
      followSymbolicLinks: false,
      absolute: isAbsolute(pattern),
      ignore: [...skippedFolders].map((name) => `**/${name}/**`),
    })
    .filter((file) => {
      const location = resolve(from, file);
      return isYaml(file) && !isIgnored(location, false, levelsAround(dirname(location)));
    })
    .sort();
  const isExcluded = (file: string): boolean => {
    const location = resolve(from, file);
    const rules = excluding(dirname(location));
    return rules !== undefined && isIgnored(location, false, [rules]);
  };
  return {
    files: all.filter((file) => !isExcluded(file)).map((file) => ({ file, how: "matched" })),
    excluded: all.filter(isExcluded),
  };
}

/** Files with a fixed role, by name. */
export function roleOf(file: string): "visit" | "farm" | "settings" | "results" | "other" {
  const name = basename(file).replace(/\.yml$/i, ".yaml");
  // Most files are pigs, and known at once.
  if (!/^[vfcr]/i.test(name)) return "other";
  if (name === "visit.yaml") return "visit";
  if (name === "farm.yaml") return "farm";
  if (name === "carcase.yaml") return "settings";
  if (isResultsName(name)) return "results";
  return "other";
}
