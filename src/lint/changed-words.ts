/** Words of change in a note: what a normal organ does not have. */
import { description } from "../knowledge/index.ts";
import { wordIn } from "./words-in.ts";

/**
 * The first word of change of the text that is not denied: `black` in "black, no froth", nothing in "no froth or blood".
 * A clause ends at a comma, a semicolon, a full stop or at `but`; what is denied before a comma is denied after it as well
 * when the list goes on with `or`, `nor` or `and`.
 */
export function changedWord(note: string | undefined): string | undefined {
  const { words, negations, unless } = description.changed;
  const clauses = (note ?? "").split(/[,;.!?]|\bbut\b|\byet\b/iu);
  if (wordIn(note, unless) !== undefined) return undefined;
  for (const [index, clause] of clauses.entries()) {
    const word = wordIn(clause, words);
    if (word === undefined) continue;
    const before = clause.slice(0, clause.toLowerCase().indexOf(word.split(/[\s-]/)[0] ?? word));
    const listed = clauses
      .slice(index + 1)
      .concat(clause)
      .some((later) => /\b(?:or|nor)\b/iu.test(later));
    const earlier = listed ? clauses.slice(0, index).join(" ") : "";
    if (wordIn(`${earlier} ${before}`, negations) === undefined) return word;
  }
  return undefined;
}
