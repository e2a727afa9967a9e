/** Patterns under `exclude:` that match nothing, whatever lies there, or that do not do what they were written for. */
import ignore from "ignore";
import type { Path } from "../model/path.ts";

/** What is wrong with each pattern that cannot work, and what to write. */
export function excludeFaults(patterns: readonly string[] = []): { path: Path; message: string }[] {
  return patterns.flatMap((pattern, index) => {
    const message = faultOf(pattern, patterns.slice(0, index));
    return message === undefined
      ? []
      : [{ path: ["exclude", index], message: `exclude[${index}]: "${pattern}" ${message}` }];
  });
}

function faultOf(pattern: string, before: readonly string[]): string | undefined {
  const isKept = pattern.startsWith("!");
  const bare = isKept ? pattern.slice(1) : pattern;
  if (bare.trim() === "" || /^\/+$/.test(bare))
    return "names nothing; write a folder (drafts/) or files (*.values.yaml).";
  if (pattern.startsWith("#"))
    return "is a comment in patterns of this kind; write \\# for a name that begins so.";
  if (/^(?:[a-z]:|~|\\\\)/i.test(bare) || bare.split("/").includes(".."))
    return "leads out of the folder of carcase.yaml, and patterns hold inside it; write them from there.";
  if (/(?:^|\/)\.(?:\/|$)/.test(bare))
    return `matches nothing, because of its "."; write ${bare.replace(/(^|\/)\.(?:\/|$)/g, "$1") || "the names of folders or files"}.`;
  // A backslash takes the meaning from the sign that follows it.
  if (/\\(?![#!*?[\]\\ -])/.test(bare))
    return `matches nothing, because of its "\\"; write / between folders: ${bare.replaceAll("\\", "/")}.`;
  if (isOpen(bare)) return 'has a "[" without its "]"; close it, or write \\[ for the sign itself.';
  if (!isKept) return undefined;
  if (!before.some((one) => !one.startsWith("!")))
    return "takes a file back in, but nothing is excluded before it; write it below the pattern that excludes the file.";
  const rules = ignore().add(before);
  const folders = bare.replace(/^\//, "").split("/").slice(0, -1);
  const closed = folders
    .map((_, index) => `${folders.slice(0, index + 1).join("/")}/`)
    .find((folder) => !/[*?[]/.test(folder) && rules.ignores(folder));
  return closed === undefined
    ? undefined
    : `takes nothing back in, because the whole folder ${closed} is excluded; exclude ${closed}* instead.`;
}

/** Whether a bracket is not closed behind at least one sign. */
function isOpen(pattern: string): boolean {
  const last = pattern.lastIndexOf("]");
  return [...pattern.matchAll(/\[/g)].some(
    ({ index }) => pattern[index - 1] !== "\\" && (last <= index + 1 || pattern[index + 1] === "]"),
  );
}
