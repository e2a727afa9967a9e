/** Words that a text affirms: vesicles in "vesicles on the snout", nothing in "no vesicles". It only decides whether to ask. */
import { denialWords } from "../knowledge/index.ts";
import { hasAny, type Occurrence, occurrences } from "./words-in.ts";

export interface Affirmed {
  /** The word as it stands in the text. */
  readonly text: string;
  /** The part of the sentence it stands in. */
  readonly clause: string;
}

const { before, after, supposed, joining } = denialWords;
/** Look like a denial and are none. */
const noDenial =
  /\b(?:no doubt|not only|nothing but|not (?:yet )?excluded|not ruled out|can ?not (?:be excluded|rule out)|not normal|nicht nur|nicht auszuschlie(?:ss|ß)en)\b/giu;

/** The words of the list that the text affirms, in its order. A word in doubt is affirmed. */
export function affirmed(text: string | undefined, words: readonly string[]): Affirmed[] {
  if (text === undefined || !hasAny(text.normalize("NFC"), words)) return [];
  return clausesOf(text).flatMap((clause) =>
    occurrences(clause, words)
      .filter((word) => !isDenied(word, clause))
      .map((word) => ({ text: word.text, clause })),
  );
}

/** The parts of a text that can deny or affirm on their own. */
export const clausesOf = (text: string): string[] =>
  text
    .normalize("NFC")
    .replaceAll(noDenial, " ")
    .split(/[;!?\n()]|\.(?=\s|$)|\s[-–—]\s|\b(?:but|except|however|aber|jedoch|sondern)\b/iu)
    .filter((clause) => clause.trim() !== "");

/** Nobody denies a word over more than this; a longer look at each of many words would never end. */
const reach = 300;

function isDenied({ index, end }: Occurrence, clause: string): boolean {
  const [head, tail] = [clause.slice(Math.max(0, index - reach), index), clause.slice(end, end + reach)];
  if (hasAny(head, supposed)) return true;
  const denial = occurrences(head, before).at(-1);
  if (denial !== undefined) {
    const between = head.slice(denial.end);
    // A denial goes on through a list, "no froth, blood or pus", and not to what comes next.
    if (!between.includes(",") || hasAny(`${between}${tail}`, joining)) return true;
  }
  const [own = "", next = ""] = tail.split(",");
  return hasAny(own, after) || isNo(next.trim());
}

/** A part of a sentence that says no and nothing else. */
function isNo(part: string): boolean {
  const [first] = occurrences(part, after);
  return (
    first?.index === 0 &&
    /^(?:\s*(?:seen|found|present|there|anywhere|gesehen|gefunden))?$/iu.test(part.slice(first.end))
  );
}
