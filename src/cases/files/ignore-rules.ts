/** The .gitignore files that hold for a folder. */
import { dirname, join, relative, sep } from "node:path";
import ignore from "ignore";
import { namesIn } from "./file-kind.ts";
import { readText } from "./read-text.ts";
import { isInside } from "./shown-paths.ts";

/** What is asked of a set of patterns. */
interface Rules {
  test(path: string): { readonly ignored: boolean; readonly unignored: boolean };
}

/** The rules of one .gitignore file, or of settings, and the folder that it lies in. */
export interface Level {
  readonly folder: string;
  readonly rules: Rules;
}

/** The rules of a folder's own .gitignore; none when there is no such file that can be read. */
export function levelsIn(folder: string): Level[] {
  const read = readText(join(folder, ".gitignore"));
  return read.ok ? [{ folder, rules: ignore().add(read.text.split(/\r?\n/).filter(isShort)) }] : [];
}

/** Rules that are written elsewhere than in a .gitignore. */
export const levelOf = (folder: string, patterns: readonly string[]): Level => ({
  folder,
  rules: ignore().add(patterns.filter(isShort)),
});

/**
 * Every `*` of a part of a path is tried against every beginning of a name, and each further one at every place again:
 * lines with many are passed over, and so are those that are longer than any path.
 */
const isShort = (line: string): boolean =>
  line.length <= longest && line.split("**").length <= mostStars && line.split("/").every(hasFewStars);
const hasFewStars = (part: string): boolean => part.split(/\*+/).length <= mostStars;

const longest = 1000;
const mostStars = 4;

/** The rules of the folders above, up to the one that holds .git; none outside a repository. */
export function levelsAbove(start: string): Level[] {
  if (namesIn(start).includes(".git")) return [];
  const levels: Level[] = [];
  for (let folder = dirname(start); ; folder = dirname(folder)) {
    levels.unshift(...levelsIn(folder));
    if (namesIn(folder).includes(".git")) return levels;
    if (dirname(folder) === folder) return [];
  }
}

/** The rules of a folder and of those above it. */
export const levelsAround = (folder: string): Level[] => [...levelsAbove(folder), ...levelsIn(folder)];

/** Whether a path is ignored; rules further down overrule those above. */
export function isIgnored(path: string, isFolder: boolean, levels: readonly Level[]): boolean {
  return levels.reduce((ignored, { folder, rules }) => {
    const inside = relative(folder, path).split(sep).join("/");
    if (inside === "" || !isInside(inside)) return ignored;
    const result = rules.test(isFolder ? `${inside}/` : inside);
    return result.ignored || (ignored && !result.unignored);
  }, false);
}
