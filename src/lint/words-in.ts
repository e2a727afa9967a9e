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

/** What must stand in the text for the word to be there: a cheap look before the costly one. */
const firstPart = (word: string): string => (/^[^\s-]+/.exec(word)?.[0] ?? word).toLowerCase();

/** Made once for each word: the lists are long and are held against every text. */
const patterns = new Map<string, RegExp>();

function pattern(word: string): RegExp {
  const known = patterns.get(word) ?? makePattern(word);
  patterns.set(word, known);
  return known;
}

function makePattern(word: string): RegExp {
  const escaped = word.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&").replaceAll(/[\s-]+/g, "[\\s-]+");
  return new RegExp(`(?<![\\p{L}\\d])${escaped}(?![\\p{L}\\d])`, "iu");
}
