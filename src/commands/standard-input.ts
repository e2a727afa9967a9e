/** What comes from standard input. */
import { readToEnd } from "../cases/files/input.ts";
import { maxBytes } from "../cases/files/read-text.ts";
import { UsageError } from "./usage-error.ts";

const descriptor = 0;

/** Standard input, whichever of its names a path is. */
export const asStandardInput = (path: string): string =>
  /^\/(?:dev\/(?:stdin|fd\/0)|proc\/self\/fd\/0)$/.test(path) ? "-" : path;

/** Reads to the end, or one byte beyond what a file may have. @throws UsageError when it is a folder or not open */
export function readStandardInput(): Buffer {
  try {
    return readToEnd(descriptor, maxBytes);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? "unknown reason";
    throw new UsageError(`standard input cannot be read (${code})`);
  }
}
