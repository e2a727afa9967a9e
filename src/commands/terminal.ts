/** The one place that writes: to the terminal, or to a file as a whole. */
import { randomUUID } from "node:crypto";
import { realpathSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { makeStyle, type Style } from "../formats/index.ts";
import type { CommonOptions } from "./options.ts";
import { UsageError } from "./usage-error.ts";

/** Colours for a stream: --no-color and NO_COLOR switch off, FORCE_COLOR on, else only on a terminal. */
export function styleFor(stream: NodeJS.WriteStream, options: CommonOptions): Style {
  const { NO_COLOR: no, FORCE_COLOR: force, TERM: term } = process.env;
  if (!options.color || (no !== undefined && no !== "")) return makeStyle(false);
  if (force !== undefined && force !== "" && force !== "0") return makeStyle(true);
  return makeStyle(stream.isTTY === true && term !== "dumb");
}

/** Style of the result: never coloured in a file. */
export const resultStyle = (options: CommonOptions): Style =>
  options.output === undefined ? styleFor(process.stdout, options) : makeStyle(false);

/**
 * Writes the result to standard output or to `--output`. A file is written beside its place and then renamed, so
 * that it is there as a whole or not at all.
 * @throws UsageError when the file cannot be written
 */
export function writeResult(text: string, options: CommonOptions): void {
  if (options.output === undefined) {
    process.stdout.write(text);
    return;
  }
  const target = realTarget(options.output);
  const temporary = `${target}.${randomUUID().slice(0, 8)}.tmp`;
  try {
    writeFileSync(temporary, text);
    renameSync(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw new UsageError(
      `cannot write ${options.output} (${(error as NodeJS.ErrnoException).code ?? "unknown reason"})`,
    );
  }
}

/** A link keeps pointing where it points. */
function realTarget(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return file;
  }
}
