/** Words of a list in free text. */

/**
 * The first word of the list that stands in the text as a whole word, whatever its case; a space in it may be a
 * hyphen.
 */
export function wordIn(text: string | undefined, words: readonly string[]): string | undefined {
  if (text === undefined) return undefined;
  const lower = text.toLowerCase();
  return words.find((word) => lower.includes(firstPart(word)) && pattern(word).test(text));
}

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
  return [...text.matchAll(listPattern(words))].map((match) => ({
    text: match[0],
    index: match.index,
    end: match.index + match[0].length,
  }));
}

/** Whether any word of the list stands in the text, in the same sense. */
export const hasAny = (text: string, words: readonly string[]): boolean =>
  text.search(listPattern(words)) >= 0;

/** What must stand in the text for the word to be there: a cheap look before the costly one. */
const firstPart = (word: string): string => (/^[^\s-]+/.exec(word)?.[0] ?? word).toLowerCase();

/** Made once for each word: the lists are long and are held against every text. */
const patterns = new Map<string, RegExp>();

function pattern(word: string): RegExp {
  const known = patterns.get(word) ?? wholeWord(escaped(word), "iu");
  patterns.set(word, known);
  return known;
}

/** Made once for each list. */
const listPatterns = new WeakMap<readonly string[], RegExp>();

/** The longest word goes first, so that "dark red" is not read as "dark". */
export function listPattern(words: readonly string[]): RegExp {
  const known = listPatterns.get(words);
  if (known !== undefined) return known;
  const longestFirst = [...words].sort((a, b) => b.length - a.length);
  // An empty list is met nowhere.
  const made = wholeWord(longestFirst.map(anySpelling).join("|") || "(?!)", "giu");
  listPatterns.set(words, made);
  return made;
}

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
