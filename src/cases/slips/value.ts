/** The value that somebody meant whose value does not fit its schema. Only what can be told; the fault stays a fault. */
import type { ErrorObject } from "ajv";
import { familiesOfSign } from "../../knowledge/index.ts";
import { suggestion } from "../faults/suggestion.ts";
import { intendedWord, wordsWithin } from "./word.ts";

/**
 * @param errors all errors of the validator at the place of the value
 * @returns undefined when nothing can be told
 */
export function intendedValue(value: unknown, errors: readonly ErrorObject[]): unknown {
  if (typeof value === "object" || value === undefined) return undefined;
  const text = String(value);
  const allowed = errors.flatMap(({ keyword, params }) =>
    keyword === "enum"
      ? (params.allowedValues as unknown[])
      : keyword === "const"
        ? [params.allowedValue as unknown]
        : [],
  );
  const words = allowed.filter((word) => typeof word === "string");
  const word = words.length === 0 ? undefined : (intendedWord(text, words) ?? wordsWithin(text, words)[0]);
  if (word !== undefined) return word;
  const patterns = errors.flatMap(({ parentSchema }) =>
    [parentSchema?.pattern].filter((one) => one !== undefined),
  );
  const types = errors.flatMap(({ keyword, params }) =>
    keyword === "type" ? [params.type].flat().map(String) : [],
  );
  if (patterns.length > 0) return suggestion(text, patterns.map(String));
  if (types.includes("array")) return partsOf(text.split(/[,;+&/]|\sand\s/));
  // `14 pigs`, `14 of 248`: the message says to write the number alone.
  const number = /^\s*(\d+(?:[.,]\d+)?)(?![\d.,])/.exec(text)?.[1];
  if (number !== undefined && types.some((type) => type === "number" || type === "integer"))
    return Number(number.replace(",", "."));
  return undefined;
}

/** The different entries of a list that is written in one line, each without the space around it. */
export const partsOf = (list: readonly string[]): string[] =>
  differing(list.map((part) => part.trim()).filter((part) => part !== ""));

/** Nobody guesses at more in one list: each that is no word of the format is compared with all that are. */
const mostGuesses = 300;

/** The different entries of a list. Signs of the format are all kept: an alarm may rest on the last of them. */
export function differing<Part>(list: readonly Part[]): Part[] {
  const all = [...new Set(list)];
  if (all.length <= mostGuesses) return all;
  const isSign = (part: Part): boolean => typeof part === "string" && familiesOfSign(part).length > 0;
  return [...all.filter(isSign), ...all.filter((part) => !isSign(part)).slice(0, mostGuesses)];
}
