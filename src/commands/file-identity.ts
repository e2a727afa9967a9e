/** Which file a path means, whatever other names it has. */
import { type BigIntStats, lstatSync, readlinkSync, realpathSync, statSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";

/** No chain of links is longer. */
const mostLinks = 40;

/** The file behind links, the last of which may lead to a file that is still to be made. */
export function realTarget(file: string, links = mostLinks): string {
  try {
    return realpathSync(file);
  } catch {
    const link = lstatSync(file, { throwIfNoEntry: false })?.isSymbolicLink()
      ? readlinkSync(file)
      : undefined;
    if (link !== undefined && links > 0) return realTarget(resolve(dirname(file), link), links - 1);
    return inRealFolder(resolve(file));
  }
}

function inRealFolder(file: string): string {
  try {
    return join(realpathSync(dirname(file)), basename(file));
  } catch {
    return file;
  }
}

/** The same for every name of a file: links of both kinds, and spellings that a file system takes for one. */
export function identity(file: string): string {
  try {
    const number = numberOf(statSync(file, { bigint: true }));
    if (number !== undefined) return number;
  } catch {
    // It is still to be made.
  }
  return realTarget(file);
}

/** Undefined on a file system that numbers no files. */
export const numberOf = ({ dev, ino }: BigIntStats): string | undefined =>
  ino === 0n ? undefined : `${dev} ${ino}`;
