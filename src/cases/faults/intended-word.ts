/** The word of the format that somebody meant who wrote another: Vesicle, blisters, hemorrhage. */
import { slipWords } from "../../knowledge/index.ts";
import { nearest } from "../../words/nearest.ts";

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, " ")
    .trim();

/** What is written for a word or a key of the format, each way once. */
const byWritten = (lists: Readonly<Record<string, readonly string[]>>): ReadonlyMap<string, string> =>
  new Map(
    Object.entries(lists).flatMap(([word, written]) => written.map((one) => [plain(one), word] as const)),
  );

const others = byWritten(slipWords.words);
const keys = byWritten(slipWords.keys);

/**
 * The one of the allowed words that a single expression stands for: another spelling, a plural, another word for the
 * same (slip-words.yaml), or the nearest word.
 * @returns undefined when nothing is near
 */
export function intendedWord(written: string, allowed: readonly string[]): string | undefined {
  const text = plain(written);
  const same = others.get(text);
  if (same !== undefined && allowed.includes(same)) return same;
  const near = nearest(written, allowed);
  // `one` and `bone` are near to it and do not mean it.
  return near === "none" && text !== "none" ? undefined : near;
}

/** The one of the known keys that a key stands for, in the same sense. */
export function intendedKey(written: string, known: readonly string[]): string | undefined {
  const same = keys.get(plain(written));
  return same !== undefined && known.includes(same) ? same : nearest(written, known);
}

/** A text in small letters without the signs round it. */
const bare = (text: string): string => /[\p{L}\p{N}](?:.*[\p{L}\p{N}])?/su.exec(plain(text))?.[0] ?? "";

/**
 * Whether a text says nothing where a reason is asked for: no two letters, one letter over and over,
 * `n/a`, `pending`. The words are data.
 */
export function saysNothing(text: string): boolean {
  const words = bare(text);
  return !/\p{L}.*\p{L}/su.test(words) || slipWords.no_answers.includes(words) || /^(.)\1+$/u.test(words);
}
