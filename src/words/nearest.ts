/** The word somebody probably meant. */
import { distance } from "fastest-levenshtein";

/** Nobody means a word by a longer text. */
const longest = 100;

/**
 * The known word nearest to what was written: one that differs in case only, one that it begins, one that it only
 * puts an ending to (coughing, cough), one of the same parts in another order (pig-treated, treated-pig), or one few
 * letters away (a third of its length, at least two).
 * @returns undefined when nothing is near
 */
export function nearest(written: string, known: readonly string[]): string | undefined {
  const lower = written.toLowerCase().replaceAll(/[\s_-]+/g, "-");
  const words = known.map((word) => ({ word, lower: word.toLowerCase().replaceAll(/[\s_-]+/g, "-") }));
  const same = words.find((entry) => entry.lower === lower);
  if (same !== undefined) return same.word;
  if (lower === "" || lower.length > longest) return undefined;
  const begun = words.filter((entry) => entry.lower.startsWith(lower));
  if (begun.length === 1) return begun[0]?.word;
  const turned = words.find((entry) => inOrder(entry.lower) === inOrder(lower));
  if (turned !== undefined) return turned.word;
  const ended = words.filter(
    (entry) =>
      entry.lower.length > 3 &&
      /^[a-z]{1,4}$/.test(lower.replace(entry.lower, "")) &&
      lower.startsWith(entry.lower),
  );
  if (ended.length === 1) return ended[0]?.word;
  const ranked = words
    .map((entry) => ({ ...entry, distance: distance(lower, entry.lower) }))
    .sort((a, b) => a.distance - b.distance);
  const best = ranked[0];
  if (best === undefined) return undefined;
  return best.distance <= Math.max(2, Math.floor(best.lower.length / 3)) && best.distance < lower.length
    ? best.word
    : undefined;
}

/** The parts of a word in alphabetical order. */
const inOrder = (word: string): string => word.split("-").sort().join("-");
