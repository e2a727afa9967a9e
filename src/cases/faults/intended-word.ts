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

/** The same letters for the same sound, whatever the country: Ödem, oedema, edema; Nekrose, necrosis. */
const fold = (text: string): string =>
  plain(text)
    .replaceAll(/ae|oe|[äöæœ]/g, "e")
    .replaceAll("sz", "sc")
    .replaceAll("k", "c")
    .normalize("NFD")
    .replaceAll(/\p{M}/gu, "");

/**
 * The one of the allowed words that a single expression stands for: the word or one of its other names (slip-words.yaml, and
 * those of the vocabulary), in another spelling, with an ending, or a few letters off.
 * @returns undefined when nothing is near
 */
export function intendedWord(written: string, allowed: readonly string[]): string | undefined {
  const text = plain(written);
  const same = others.get(text)?.find((word) => allowed.includes(word));
  if (same !== undefined) return same;
  const named = new Map<string, string>();
  for (const names of [(word: string) => [word], (word: string) => slipWords.words[word] ?? []])
    for (const word of allowed)
      for (const name of names(word)) named.set(fold(name), named.get(fold(name)) ?? word);
  const name = nearest(fold(text), [...named.keys()]);
  // Nobody misspells the first letter, so what begins otherwise is another word.
  const near = name?.[0] === fold(text)[0] ? named.get(name ?? "") : undefined;
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
 * Whether a text says nothing where a reason is asked for: no two letters, one letter over and over, or only words such as
 * `pending`, `none yet`, `n/a`. The words are data.
 */
export function saysNothing(text: string): boolean {
  const words = bare(text);
  if (!/\p{L}.*\p{L}/su.test(words) || /^(.)\1+$/u.test(words)) return true;
  return words.length < 40 && words.split(/[^\p{L}]+/u).every((word) => slipWords.no_answers.includes(word));
}
