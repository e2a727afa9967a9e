import { sep } from "node:path";

/** A path as it is written in a file, on every system. */
export const asWritten = (path: string): string => path.split(sep).join("/");
