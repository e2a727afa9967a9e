/** What stands at a path, without opening it. */
import { lstatSync, realpathSync, statSync } from "node:fs";

export type FileKind = "file" | "folder" | "loop" | "broken link" | "nothing";

/** Links are followed. Pipes and devices count as files, and are refused when they are read. */
export function kindOf(path: string): FileKind {
  try {
    return statSync(path).isDirectory() ? "folder" : "file";
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === "ELOOP") return "loop";
    if (code === "EACCES") return "file";
    return code === "ENOENT" && isLink(path) ? "broken link" : "nothing";
  }
}

/** Whether a plain file stands at a path, or at the end of its links. */
export function isPlainFile(path: string): boolean {
  try {
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

/** Whether the path itself is a link. */
export function isLink(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true;
}

/** One name for a file, however it was reached. */
export function sameFile(location: string): string {
  try {
    return realpathSync.native(location);
  } catch {
    return location;
  }
}
