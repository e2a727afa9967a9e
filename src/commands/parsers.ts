/** What was typed as the value of an option, as a value; nonsense is told what to write instead. */
import { unknownName } from "../cases/index.ts";
import { UsageError } from "./usage-error.ts";

/**
 * Turns the range errors of a library call (an unknown id, a level out of range) into errors of usage.
 * @param where the message begins with it; empty where it says so itself
 */
export function asUsage<T>(where: string, call: () => T): T {
  try {
    return call();
  } catch (error) {
    if (error instanceof RangeError)
      throw new UsageError(where === "" ? error.message : `${where}: ${error.message}`);
    throw error;
  }
}

/** The parts of a list that is separated by commas. */
export const partsOf = (text: string): string[] =>
  text
    .split(",")
    .map((part) => part.trim())
    .filter((part) => part !== "");

/**
 * `{ scales: ["maff-1978"] }` from `--scale maff-1978,`; nothing when the option was not given. Whether there is such a
 * name the library says.
 * @throws UsageError when there is no name in it
 */
export function ids<Name extends string>(
  name: Name,
  option: string,
  text: string | undefined,
): { [key in Name]?: string[] } {
  if (text === undefined) return {};
  const parts = partsOf(text);
  if (parts.length === 0)
    throw new UsageError(
      `${option}: there is no name in "${text}"; write one or several, separated by commas, or leave the option out`,
    );
  return { [name]: parts } as { [key in Name]?: string[] };
}

/**
 * A word of a list that is known. Hyphens and underscores are the same, and so are one and several (`pen`, `pens`).
 * @param what the word is, for the message
 * @throws UsageError with the nearest word for one that is not known
 */
export function oneOf<Word extends string>(
  option: string,
  text: string,
  known: readonly Word[],
  what = "choice",
): Word {
  const typed = text.trim();
  const word = known.find((one) => bare(one) === bare(typed));
  if (word === undefined) throw new UsageError(`${option}: ${unknownName(typed, known, what)}`);
  return word;
}

const bare = (word: string): string => word.replaceAll("_", "-").replace(/s$/, "");

/** Several such words, separated by commas, each once. @throws UsageError when one is not known */
export const manyOf = <Word extends string>(
  option: string,
  text: string,
  known: readonly Word[],
): readonly Word[] => [...new Set(text.split(",").map((part) => oneOf(option, part, known, "part")))];

/** A number with what it is a share of, as typed: `5%` is 0.05. */
function typedShare(text: string): { readonly value: number; readonly percent: boolean } | undefined {
  const found = /^(\d+(?:\.\d+)?|\.\d+)\s*(%?)$/.exec(text.trim());
  if (found === null) return undefined;
  const number = Number(found[1]);
  const percent = found[2] === "%";
  return { value: percent ? Number((number / 100).toPrecision(12)) : number, percent };
}

/** A share from 0 to 1, from `5%`, `5 %` or `0.05`. @throws UsageError for anything else */
export function share(option: string, text: string): number {
  const typed = typedShare(text);
  if (typed === undefined)
    throw new UsageError(`${option}: "${text}" is no share; write 5% or 0.05${commaHint(text)}`);
  if (!typed.percent && typed.value >= 1)
    throw new UsageError(`${option}: "${text}" is no share; did you mean ${text.trim()}%? Write 5% or 0.05`);
  if (typed.value > 1)
    throw new UsageError(`${option}: "${text}" is more than all; write a share up to 100%`);
  return typed.value;
}

const commaHint = (text: string): string =>
  /^\d*,\d+\s*%?$/.test(text.trim()) ? ", with a point, not a comma" : "";

/** A share above 0, up to 1. @throws UsageError for anything else */
export function someShare(option: string, text: string): number {
  const value = share(option, text);
  if (value > 0) return value;
  throw new UsageError(`${option}: "${text}" does not fit; write a share above 0%, such as 5%`);
}

/** A share above 0 and below 1. @throws UsageError for anything else */
export function openShare(option: string, text: string): number {
  const value = share(option, text);
  if (value > 0 && value < 1) return value;
  throw new UsageError(
    `${option}: "${text}" does not fit; write a share above 0% and below 100%, such as 95%`,
  );
}

/** Several shares above 0, separated by commas. @throws UsageError when one is none */
export const shares = (option: string, text: string): number[] =>
  partsOf(text).map((part) => someShare(option, part));

/** One share, or one for each group, separated by commas. @throws UsageError when one is none */
export function groupShares(option: string, text: string): number | number[] {
  const parts = commaHint(text) === "" ? partsOf(text) : [text];
  const [first = text, ...others] = parts;
  return others.length === 0 ? share(option, first) : parts.map((part) => share(option, part));
}

/** Of 100 pigs those with grade 0, 1, 2 and so on. @throws UsageError when they do not add up */
export function ofHundred(option: string, text: string): number[] {
  const parts = partsOf(text);
  const numbers = parts.map((part) =>
    typedShare(part) === undefined ? Number.NaN : Number.parseFloat(part),
  );
  const odd = parts[numbers.findIndex(Number.isNaN)];
  const example = "write of 100 pigs those with grade 0, 1, 2 and so on, such as 40,30,20,10";
  if (odd !== undefined || parts.length < 2)
    throw new UsageError(`${option}: "${odd ?? text}" does not fit; ${example}`);
  const all = numbers.reduce((sum, one) => sum + one, 0);
  if (Math.abs(all - 100) > 0.5)
    throw new UsageError(
      `${option}: ${text.trim()} add up to ${Number(all.toFixed(2))}, not 100; ${example}`,
    );
  return numbers;
}

/** `{ level: 0.95 }` from `--level 95%`; nothing when it was not given. @throws UsageError for what is no level */
export function confidence(text: string | undefined): { level?: number } {
  if (text === undefined) return {};
  const { value, percent } = typedShare(text) ?? { value: Number.NaN, percent: true };
  if (value > 0 && value < 1) return { level: value };
  const hint = !percent && value > 1 && value < 100 ? `did you mean ${text.trim()}%? Write` : "write";
  throw new UsageError(
    `--level: "${text}" is no confidence level; ${hint} a share above 0 and below 1, such as 0.95 or 95%${commaHint(text)}`,
  );
}

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
  partsOf(text).map((part) => whole(option, part, lowest, highest));
