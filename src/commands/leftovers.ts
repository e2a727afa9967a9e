/** Files and folders that a run wrote beside their place and could not rename, because it was cut off in between. */
import { lstatSync, readdirSync, readlinkSync, rmSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { sha256 } from "../words/sha256.ts";

/** Signs of a name that are kept in the temporary one: with the rest it must not be too long for a file system. */
const kept = 40;

/** `.pig-01.yaml.carcase-3f90ab-4711-x7k2p0.tmp`: the machine, the process, and what tells two of its files apart. */
export function temporaryName(name: string): string {
  const random = Math.random().toString(36).slice(2, 10);
  return `.${Array.from(name).slice(0, kept).join("")}.carcase-${machine()}-${process.pid}-${random}.tmp`;
}

const pattern = /^\..*\.carcase-([0-9a-f]{6})-(\d+)-[a-z0-9]*\.tmp$/s;

/** No run writes a file for so long, in milliseconds; of another machine it is not known whether it still runs. */
const longest = 24 * 60 * 60 * 1000;

/** What runs that are over have left in a folder. @param names those in it, where they are known */
export function leftoversIn(folder: string, names?: readonly string[]): string[] {
  try {
    return (names ?? readdirSync(folder))
      .filter((name) => isLeft(folder, name))
      .map((name) => join(folder, name));
  } catch {
    return [];
  }
}

/** Removes them. @returns those that are gone now */
export const clearLeftovers = (folder: string): string[] =>
  leftoversIn(folder).filter((file) => {
    try {
      rmSync(file, { recursive: true });
      return true;
    } catch {
      // Another run was quicker, or nobody may.
      return false;
    }
  });

function isLeft(folder: string, name: string): boolean {
  const [, where, by] = pattern.exec(name) ?? [];
  if (where === undefined) return false;
  const status = lstatSync(join(folder, name), { throwIfNoEntry: false });
  if (status === undefined || !(status.isFile() || status.isDirectory())) return false;
  return Date.now() - status.mtimeMs > longest || (where === machine() && !isRunning(Number(by)));
}

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== "ESRCH";
  }
}

/** Where numbers of processes mean the same: a computer, and on it a container. */
function machine(): string {
  return sha256(Buffer.from(`${hostname()} ${processes()}`)).slice(0, 6);
}

function processes(): string {
  try {
    return readlinkSync("/proc/self/ns/pid");
  } catch {
    return "";
  }
}
