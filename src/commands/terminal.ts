/** The one place that writes: to the terminal, or to a file as a whole. */
import { fstatSync, writeFileSync } from "node:fs";
import { makeStyle, type Style } from "../formats/page/style.ts";
import type { OutputOptions } from "./options.ts";
import { cannotWrite, writeWhole } from "./write-file.ts";

/** Colours for a stream: --no-color and NO_COLOR switch off, FORCE_COLOR on, else only on a terminal. */
export function styleFor(stream: NodeJS.WriteStream, options: OutputOptions): Style {
  const { NO_COLOR: no, FORCE_COLOR: force, TERM: term } = process.env;
  if (!options.color || (no !== undefined && no !== "")) return makeStyle(false);
  if (force !== undefined && force !== "" && force !== "0") return makeStyle(true);
  return makeStyle(stream.isTTY === true && term !== "dumb");
}

/** Style of the result: never coloured in a file. */
export const resultStyle = (options: OutputOptions): Style =>
  options.output === undefined ? styleFor(process.stdout, options) : makeStyle(false);

/**
 * Writes the result to standard output or to `--output`; a file is there as a whole or not at all.
 * @throws UsageError when the file cannot be written
 */
export function writeResult(text: string, options: OutputOptions): void {
  if (options.output !== undefined) writeWhole(options.output, text);
  else if (!isPlainFile(standardOutput)) process.stdout.write(text);
  else
    try {
      // On a disk that fills up the stream of Node would leave out the rest and say nothing.
      writeFileSync(standardOutput, text);
    } catch (error) {
      throw cannotWrite("the result to standard output", error);
    }
}

const standardOutput = 1;

function isPlainFile(descriptor: number): boolean {
  try {
    return fstatSync(descriptor).isFile();
  } catch {
    return false;
  }
}

/** Whether bars can be shown: the locale is a UTF-8 one, or nothing is said and the system is one that has no other. */
export function showsBars(): boolean {
  const { LC_ALL: all, LC_CTYPE: type, LANG: lang, WT_SESSION: terminal } = process.env;
  const locale = [all, type, lang].find((one) => one !== undefined && one !== "");
  if (locale !== undefined) return /utf-?8/i.test(locale);
  return process.platform === "darwin" || terminal !== undefined;
}

/** Narrower than this no table can be read. */
const narrowest = 60;

/**
 * Characters a line may have, 60 or more: what COLUMNS says, else as wide as the terminal is, else 80. A file is no
 * terminal.
 */
export function pageWidth({ output }: Pick<OutputOptions, "output">): number {
  const { COLUMNS: said } = process.env;
  if (said !== undefined && /^[1-9]\d{0,3}$/.test(said)) return Math.max(narrowest, Number(said));
  const { isTTY, columns } = process.stdout;
  return output === undefined && isTTY && columns > 0 ? Math.max(narrowest, columns) : 80;
}

/** Now; or the time in SOURCE_DATE_EPOCH, for results that are to come out the same. */
export function timeOfRun(): Date {
  const { SOURCE_DATE_EPOCH: seconds } = process.env;
  return seconds !== undefined && /^\d{1,10}$/.test(seconds) ? new Date(Number(seconds) * 1000) : new Date();
}
