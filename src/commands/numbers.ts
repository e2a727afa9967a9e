/** Shares and counts on the command line: `5%` and `0.05` are the same, and nonsense is told what to write. */
import { UsageError } from "./usage-error.ts";

/** A share from 0 to 1, from `5%`, `5 %` or `0.05`. @throws UsageError for anything else */
export function share(option: string, text: string): number {
  const written = text.trim();
  const found = /^(\d+(?:\.\d+)?|\.\d+)\s*(%?)$/.exec(written);
  if (found === null)
    throw new UsageError(`${option}: "${text}" is no share; write 5% or 0.05${commaHint(written)}`);
  const number = Number(found[1]);
  const percent = found[2] === "%";
  if (!percent && number >= 1)
    throw new UsageError(`${option}: "${text}" is no share; did you mean ${written}%? Write 5% or 0.05`);
  const value = percent ? Number((number / 100).toPrecision(12)) : number;
  if (value > 1) throw new UsageError(`${option}: "${text}" is more than all; write a share up to 100%`);
  return value;
}

/** A share above 0, up to 1. @throws UsageError for anything else */
export function someShare(option: string, text: string): number {
  const value = share(option, text);
  if (value > 0) return value;
  throw new UsageError(`${option}: "${text}" does not fit; write a share above 0%, such as 5%`);
}

/** A share above 0 and below 1, such as a confidence level. @throws UsageError for anything else */
export function openShare(option: string, text: string): number {
  const value = share(option, text);
  if (value > 0 && value < 1) return value;
  throw new UsageError(
    `${option}: "${text}" does not fit; write a share above 0% and below 100%, such as 95%`,
  );
}

/** Several shares above 0, separated by commas. @throws UsageError when one is none */
export const shares = (option: string, text: string): number[] =>
  list(text).map((part) => someShare(option, part));

/** A whole number. @throws UsageError for anything else, naming the bounds */
export function whole(option: string, text: string, lowest = 1, highest = 10_000_000): number {
  const value = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (!(value >= lowest && value <= highest))
    throw new UsageError(
      `${option}: "${text}" does not fit; write a whole number from ${lowest} to ${highest}`,
    );
  return value;
}

/** Several whole numbers, separated by commas. @throws UsageError when one is none */
export const wholes = (option: string, text: string, lowest: number, highest: number): number[] =>
  list(text).map((part) => whole(option, part, lowest, highest));

const list = (text: string): string[] =>
  text
    .split(",")
    .map((part) => part.trim())
    .filter((part) => part !== "");

const commaHint = (text: string): string =>
  /^\d*,\d+\s*%?$/.test(text) ? ", with a point, not a comma" : "";
