/** Writes a file as a whole or not at all: beside its place first, then renamed. */
import {
  accessSync,
  chmodSync,
  constants,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { UsageError } from "./usage-error.ts";

/**
 * Writes a text. A link keeps pointing where it points, and a file that was there keeps its permissions.
 * @throws UsageError when the file cannot be written
 */
export function writeWhole(file: string, text: string): void {
  const target = realTarget(file);
  const temporary = `${target}.${process.pid}-${Date.now().toString(36)}.tmp`;
  try {
    const mode = modeOf(target);
    // A rename would replace a file that its owner has protected.
    if (mode !== undefined) accessSync(target, constants.W_OK);
    writeFileSync(temporary, text, { flag: "wx" });
    if (mode !== undefined) chmodSync(temporary, mode);
    renameSync(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw new UsageError(
      `cannot write ${file} (${(error as NodeJS.ErrnoException).code ?? "unknown reason"})`,
    );
  }
}

function realTarget(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return file;
  }
}

const modeOf = (file: string): number | undefined => statSync(file, { throwIfNoEntry: false })?.mode;
