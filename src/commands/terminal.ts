/** What the terminal can show, and what the environment says about it. */
import { makeStyle, type Style } from "../formats/page/style.ts";
import type { Colour } from "./options.ts";

/** Colours for a stream, as --color says; else NO_COLOR switches off, FORCE_COLOR on, or a terminal has them. */
export function styleFor(stream: NodeJS.WriteStream, color: Colour | false): Style {
  const { NO_COLOR: no, FORCE_COLOR: force, TERM: term } = process.env;
  if (color === "always") return makeStyle(true);
  if (color !== "auto" || (no !== undefined && no !== "")) return makeStyle(false);
  if (force !== undefined && force !== "" && force !== "0") return makeStyle(true);
  return makeStyle(stream.isTTY === true && term !== "dumb");
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
 * Characters a line may have, 60 or more: what COLUMNS says, else as wide as the terminal is. A file is no terminal: 80.
 */
export function pageWidth(inFile: boolean): number {
  const { COLUMNS: said } = process.env;
  if (said !== undefined && /^[1-9]\d{0,3}$/.test(said)) return Math.max(narrowest, Number(said));
  const { isTTY, columns } = process.stdout;
  return !inFile && isTTY && columns > 0 ? Math.max(narrowest, columns) : 80;
}

/** The day of the run by the clock of this machine. */
export function dayOfRun(): string {
  return minuteOfRun().slice(0, 10);
}

/** The minute of the run by the clock of this machine, as it is written in a case. */
export function minuteOfRun(): string {
  const now = timeOfRun();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}

/** Now; or the time in SOURCE_DATE_EPOCH, for results that are to come out the same. */
export function timeOfRun(): Date {
  const { SOURCE_DATE_EPOCH: seconds } = process.env;
  return seconds !== undefined && /^\d{1,10}$/.test(seconds) ? new Date(Number(seconds) * 1000) : new Date();
}
