/** The word of the format that somebody meant who wrote another: Vesicle, blisters, hemorrhage. */
import { denial, slipWords } from "../../knowledge/index.ts";
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

/**
 * The allowed words that a longer text names: `ruptured vesicles of the snout`.
 * @returns none for a text that names none of them, or denies what it names
 */
export function wordsWithin(text: string, allowed: readonly string[]): string[] {
  if (text.length > longest || isDenial(text)) return [];
  const words = plain(text).match(/[\p{L}\d]+/gu) ?? [];
  const parts = [...words.map((word, at) => `${word} ${words[at + 1]}`), ...words];
  const found = parts.flatMap((part) => allowed.find((one) => plain(one) === part) ?? others.get(part) ?? []);
  return [...new Set(found)].filter((word) => allowed.includes(word));
}

/** Nobody names a lesion in a longer text where one word must stand. */
const longest = 500;

/** Words that say no (denial-words.yaml), those of one word alone; `*` stands for the rest of one. */
const noes = [...denial.before, ...denial.after, "free"].filter((word) => !word.includes(" "));
const isNo = (word: string): boolean =>
  noes.some((no) => (no.endsWith("*") ? word.startsWith(no.slice(0, -1)) : word === no));

/** Whether one of the words of a text says no, wherever it stands: a lesion is not guessed from such a text. */
export const isDenial = (text: string): boolean => (plain(text).match(/\p{L}+/gu) ?? []).some(isNo);

/** A text in small letters without the signs round it. */
const bare = (text: string): string => /[\p{L}\p{N}](?:.*[\p{L}\p{N}])?/su.exec(plain(text))?.[0] ?? "";

/**
 * Whether a text says nothing where a reason or an answer is asked for: no two letters, one letter over and over,
 * `n/a`, `pending`. The words are data.
 */
export function saysNothing(text: string): boolean {
  const words = bare(text);
  return (
    !/\p{L}.*\p{L}/su.test(words) || slipWords.no_answers.whole.includes(words) || /^(.)\1+$/u.test(words)
  );
}

/**
 * Whether an answer of the authority decides nothing: it says nothing, or that nobody answered, or is a single word that
 * is no decision. The last part of it counts: `no reply at 9; at 10 Dr Hall: no suspicion`.
 */
export function isNoDecision(answer: string): boolean {
  const last = answer.split(/[;:,]|\.(?=\s|$)/u).findLast((part) => /\p{L}.*\p{L}/su.test(part)) ?? "";
  const words = bare(last).replaceAll(/[^\p{L}\p{N}']+/gu, " ");
  if (saysNothing(answer) || saysNothing(last)) return true;
  if (!/\s/u.test(bare(answer))) return !slipWords.decisions.includes(words);
  return slipWords.no_answers.within.some((one) => ` ${words} `.includes(` ${one} `));
}
