/** Where a path really leads, also when nothing is there yet. */
import { lstatSync, readlinkSync, realpathSync } from "node:fs";
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
