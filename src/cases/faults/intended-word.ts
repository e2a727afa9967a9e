/** The word of the format that somebody meant who wrote another: Vesicle, blisters, hemorrhage. */
import { slipWords } from "../../knowledge/index.ts";
import { nearest } from "../../words/nearest.ts";

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, " ")
    .trim()
    .replace(/\.$/, "");

/** The words or keys of the format by what is written for them. */
function byWritten(lists: Readonly<Record<string, readonly string[]>>): ReadonlyMap<string, string[]> {
  const words = new Map<string, string[]>();
  for (const [word, written] of Object.entries(lists))
    for (const one of written) words.set(plain(one), [...(words.get(plain(one)) ?? []), word]);
  return words;
}

const others = byWritten(slipWords.words);
const keys = byWritten(slipWords.keys);

/**
 * The one of the allowed words that a single expression stands for: another spelling, a plural, another word for the
 * same (slip-words.yaml, and the other names of the vocabulary), or the nearest word.
 * @returns undefined when nothing is near
 */
export function intendedWord(written: string, allowed: readonly string[]): string | undefined {
  const text = plain(written);
  const same = others.get(text)?.find((word) => allowed.includes(word));
  if (same !== undefined) return same;
  const near = nearest(written, allowed);
  // `one` and `bone` are near to it and do not mean it.
  return near === "none" && text !== "none" ? undefined : near;
}

/** The one of the known keys that a key stands for, in the same sense. */
export function intendedKey(written: string, known: readonly string[]): string | undefined {
  return keys.get(plain(written))?.find((key) => known.includes(key)) ?? nearest(written, known);
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
