/** Words of a list in free text. */

/** The first word in the text that is of the list, as it stands there. */
export const wordIn = (text: string | undefined, words: readonly string[]): string | undefined =>
  text === undefined ? undefined : occurrences(text, words)[0]?.text;

/** A word of a list, where and as it stands in the text. */
export interface Occurrence {
  readonly text: string;
  readonly index: number;
  readonly end: number;
}

/**
 * All words of the list in the text, in its order, in any spelling that people use (oedema, edema, Ödem). A `*` in a word
 * of the list stands for the rest of a word.
 */
export function occurrences(text: string, words: readonly string[]): Occurrence[] {
  return [...text.matchAll(patternIn(text, words))].map((match) => ({
    text: match[0],
    index: match.index,
    end: match.index + match[0].length,
  }));
}

/** Whether any word of the list stands in the text, in the same sense. */
export function hasAny(text: string, words: readonly string[]): boolean {
  const byStart = wordsByStart(words);
  return startsIn(text).some((start) => byStart.has(start)) && text.search(patternIn(text, words)) >= 0;
}

/**
 * A pattern of those words of the list that the text can hold, in any spelling. Of a long list few are left: one pattern
 * of them all would cost more than the whole reading of a case.
 */
export function patternIn(text: string, words: readonly string[]): RegExp {
  const byStart = wordsByStart(words);
  const likely: string[] = [];
  for (const start of startsIn(text)) likely.push(...(byStart.get(start) ?? []));
  if (likely.length === 0) return nowhere;
  const key = likely.sort().join("|");
  const known = joinedPatterns.get(key);
  if (known !== undefined) return known;
  // The longest word goes first, so that "dark red" is not read as "dark".
  const longestFirst = likely.sort((a, b) => b.length - a.length);
  const made = wholeWord(longestFirst.map(anySpelling).join("|"), "giu");
  joinedPatterns.set(key, made);
  return made;
}

const nowhere = /(?!)/g;

const joinedPatterns = new Map<string, RegExp>();

const listsByStart = new WeakMap<readonly string[], ReadonlyMap<string, readonly string[]>>();

/** The words of a list by how they begin; those that begin with no letter under an empty beginning. */
function wordsByStart(words: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const known = listsByStart.get(words);
  if (known !== undefined) return known;
  const made = new Map<string, string[]>();
  for (const word of words) {
    const start = startOf(word);
    const same = made.get(start);
    if (same === undefined) made.set(start, [word]);
    else same.push(word);
  }
  listsByStart.set(words, made);
  return made;
}

/** Words of different lists are often the same. */
const starts = new Map<string, string>();

function startOf(word: string): string {
  const known = starts.get(word) ?? bones(/^[\p{L}\p{M}\d]*/u.exec(word)?.[0] ?? "").slice(0, startLength);
  starts.set(word, known);
  return known;
}

/** So much of the beginning of a word tells most words of a list apart. */
const startLength = 4;

/** How the words of a text begin, in all lengths; a word that begins with no letter may stand anywhere. */
function startsIn(text: string): readonly string[] {
  const known = startsOfTexts.get(text);
  if (known !== undefined) return known;
  const found = new Set([""]);
  for (const word of text.match(/[\p{L}\p{M}\d]+/gu) ?? [])
    for (const start of startsOfWord(word)) found.add(start);
  const starts = [...found];
  if (startsOfTexts.size >= mostTexts) startsOfTexts.clear();
  startsOfTexts.set(text, starts);
  return starts;
}

/** Cases say the same few thousand words over and over. */
const startsOfWords = new Map<string, readonly string[]>();
const mostWords = 5000;

function startsOfWord(word: string): readonly string[] {
  const known = startsOfWords.get(word);
  if (known !== undefined) return known;
  const all = bones(word);
  const made = Array.from({ length: startLength }, (_, index) => all.slice(0, index + 1));
  if (startsOfWords.size >= mostWords) startsOfWords.clear();
  if (word.length <= longestStart) startsOfWords.set(word, made);
  return made;
}

/** One text is held against many lists by one rule after the other; so many are those of a large case. */
const mostTexts = 500;
const startsOfTexts = new Map<string, readonly string[]>();

/** What is the same in every spelling of a word: its consonants, each once, and where its vowels are. */
function bones(word: string): string {
  const letters = word.slice(0, longestStart).toLowerCase();
  const bare = /[^a-z\d]/.test(letters)
    ? letters.normalize("NFD").replaceAll(/\p{M}/gu, "").replaceAll("ß", "s")
    : letters;
  return bare.replaceAll(/[aeiouæøœ]+/g, "a").replaceAll(/(.)\1+/g, "$1");
}

/** Vowels and double letters are many in no beginning. */
const longestStart = 16;

const wholeWord = (word: string, flags: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\d])(?:${word})(?![\\p{L}\\d])`, flags);

const escaped = (word: string): string =>
  word.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&").replaceAll(/[\s-]+/g, "[\\s-]+");

/** Letters that keyboards and countries write in more than one way. */
const spellings: Readonly<Record<string, string>> = {
  ae: "(?:ae|ä|æ|e)",
  ä: "(?:ä|ae|a)",
  æ: "(?:æ|ae|e)",
  oe: "(?:oe|ö|œ|e)",
  ö: "(?:ö|oe|o)",
  ø: "(?:ø|oe|o)",
  å: "(?:å|aa|a)",
  ü: "(?:ü|ue|u)",
  ss: "(?:ss|ß)",
  our: "ou?r",
  é: "[ée]",
  è: "[èe]",
  ê: "[êe]",
  í: "[íi]",
  ó: "[óo]",
  ú: "[úu]",
  ñ: "[ñn]",
};

const anySpelling = (word: string): string =>
  escaped(word.toLowerCase())
    .replaceAll(/ae|oe|ss|our|[äæöøåüéèêíóúñ]/g, (letters) => spellings[letters] ?? letters)
    .replaceAll("\\*", "\\p{L}*");
