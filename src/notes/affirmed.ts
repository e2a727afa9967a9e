/** Words that a text affirms: vesicles in "vesicles on the snout", nothing in "no vesicles" or "vesicles: none". */
import { denial, description } from "../knowledge/index.ts";
import { hasAny, type Occurrence, occurrences, patternIn } from "./words-in.ts";

export interface Affirmed {
  /** The word as it stands in the text. */
  readonly text: string;
  /** The part of the sentence it stands in; of a very long one what stands near the word. */
  readonly clause: string;
  /** The sentence, as a number and in its parts, as far as they stand near the word. */
  readonly sentence: number;
  readonly clauses: readonly string[];
  /** The part of the sentence, as a number. */
  readonly part: number;
}

/**
 * What stands further from a word than so many characters says nothing of it, so that the time for a word does not grow
 * with its sentence. No sentence of a note is as long.
 */
const reach = 300;

/** The words of the list that the text affirms, in its order. A word in doubt is affirmed. */
export function affirmed(text: string | undefined, words: readonly string[]): Affirmed[] {
  // Most texts have none of the words: a cheap look before the costly one.
  if (text === undefined || !hasAny(text.normalize("NFC"), words)) return [];
  const sentences = sentencesOf(text);
  const denied = sentences.findLastIndex(({ clauses }) => clauses.some(deniesAll));
  return sentences.flatMap(({ clauses, question }, sentence) => {
    if (sentence <= denied || (question && onlyAsks(clauses))) return [];
    const following = withinReach(sentences[sentence + 1]?.clauses ?? []);
    return clauses.flatMap((clause, part) =>
      occurrences(clause, words).flatMap((word) => {
        const near = nearTo(word, clauses, part);
        const place = { ...near, question, following };
        if (isDenied(near.word, words, place)) return [];
        return [
          {
            text: word.text,
            clause: near.clauses[near.at] ?? clause,
            sentence,
            clauses: near.clauses,
            part,
          },
        ];
      }),
    );
  });
}

/** The first parts of a sentence, as far as they are within reach of its beginning. */
function withinReach(clauses: Iterable<string>): string[] {
  const near: string[] = [];
  let left = reach;
  for (const clause of clauses) {
    if (left <= 0) break;
    near.push(clause.slice(0, wordEnd(clause, left)));
    left -= clause.length;
  }
  return near;
}

/** What stands around a word: its part of the sentence and those before and after, as far as they are within reach. */
function nearTo(
  word: Occurrence,
  clauses: readonly string[],
  part: number,
): { readonly word: Occurrence; readonly clauses: readonly string[]; readonly at: number } {
  const clause = clauses[part] ?? "";
  const start = wordEnd(clause, word.index - reach);
  const before: string[] = [];
  for (let at = part - 1, left = reach; at >= 0 && left > 0; at--) {
    const earlier = clauses[at] ?? "";
    before.unshift(earlier.slice(wordEnd(earlier, earlier.length - left)));
    left -= earlier.length;
  }
  return {
    word: { ...word, index: word.index - start, end: word.end - start },
    clauses: [
      ...before,
      clause.slice(start, wordEnd(clause, word.end + reach)),
      ...withinReach(clauses.slice(part + 1, part + 1 + reach)),
    ],
    at: before.length,
  };
}

/** Where the word ends that stands at a place; no word is cut in two. */
function wordEnd(text: string, at: number): number {
  if (at <= 0) return 0;
  noLetter.lastIndex = at;
  return at >= text.length ? text.length : (noLetter.exec(text)?.index ?? text.length);
}

const noLetter = /[^\p{L}\p{M}\d]/gu;

interface Sentence {
  readonly clauses: readonly string[];
  /** It ends with a question mark. */
  readonly question: boolean;
}

interface Place extends Sentence {
  readonly at: number;
  /** The parts of the next sentence. */
  readonly following: readonly string[];
}

/** Sentences of a text, each cut into its parts at commas, brackets and dashes. */
function sentencesOf(text: string): readonly Sentence[] {
  if (lastText?.text === text) return lastText.sentences;
  const plain = text.normalize("NFC");
  const sentences = plain
    .replaceAll(patternIn(plain, denial.no_denial), " ")
    .split(/(?<=\?)|[;!\n]|\.(?=\s|$)/u)
    .flatMap((sentence) => {
      const question = sentence.endsWith("?");
      const said = question ? sentence.slice(0, -1) : sentence;
      return said.split(patternIn(said, denial.ends)).map((part) => ({ clauses: clausesOf(part), question }));
    })
    .filter(({ clauses }) => clauses.length > 0);
  lastText = { text, sentences };
  return sentences;
}

/** One text is asked for the words of several lists in a row. */
let lastText: { readonly text: string; readonly sentences: readonly Sentence[] } | undefined;

const clausesOf = (sentence: string): string[] =>
  sentence.split(/,(?!\d)|[()[\]]|\s[-–—]+\s/u).filter((clause) => clause.trim() !== "");

/** A question about what may be, and not about what lies there: `are there blisters?`, but `are these blisters?` */
function onlyAsks(clauses: readonly string[]): boolean {
  const sentence = clauses.join(", ");
  const asked = sentence.slice(sentence.lastIndexOf(":") + 1).trimStart();
  return occurrences(asked, denial.asks)[0]?.index === 0 && !hasAny(asked, denial.suspects);
}

/** `neither seen` after several things denies them all. */
const deniesAll = (clause: string): boolean => occurrences(clause.trim(), denial.all)[0]?.index === 0;

function isDenied(word: Occurrence, words: readonly string[], place: Place): boolean {
  const clause = place.clauses[place.at] ?? "";
  const [before, after] = [clause.slice(0, word.index), clause.slice(word.end)];
  return (
    isDeniedBefore(before) ||
    hasAny(before, denial.supposed) ||
    isFreeOf(after) ||
    isAnsweredNo(after) ||
    isNo(place.clauses[place.at + 1] ?? place.following[0] ?? "") ||
    isAnswered(place) ||
    isListed({ before, after }, words, place) ||
    isLookedFor({ before, after }, place)
  );
}

/** A colon ends what is denied, unless the denial stands right before it: `not small: swollen`, `not seen: vesicles`. */
function isDeniedBefore(before: string): boolean {
  const colon = before.lastIndexOf(":");
  if (reaches(before.slice(colon + 1)) || /(?<![\d.,])0\s*$/u.test(before)) return true;
  const head = before.slice(0, Math.max(colon, 0)).trimEnd();
  return [denial.before, denial.after].some((list) => occurrences(head, list).at(-1)?.end === head.length);
}

/** A denial that goes on to the end of the text: nothing but what carries it stands behind it. */
function reaches(before: string): boolean {
  const end = occurrences(before, denial.before).at(-1)?.end;
  if (end === undefined) return false;
  const between = before.slice(end);
  // Behind the last `or` of a list.
  const rest = between.slice(occurrences(between, denial.or).at(-1)?.end ?? 0);
  if (/[\p{L}\d]/u.test(rest) && occurrences(rest, denial.carries_any).at(-1)?.end === rest.trimEnd().length)
    return true;
  return [denial.carries, description.changed.words, denial.and]
    .reduce((left, list) => left.replaceAll(patternIn(left, list), " "), rest)
    .split(/[^\p{L}\d]+/u)
    .every((word) => word === "" || /^\d+$/.test(word));
}

/** A question that is answered at once: `small blister? No: dried feed` */
function isAnswered({ question, following }: Place): boolean {
  const answer = following[0]?.trimStart() ?? "";
  const [first] = occurrences(answer, denial.answers);
  return question && first?.index === 0 && /^\s*(?:[:,.–-]|$)/u.test(answer.slice(first.end));
}

/** `froth-free`, but not `blood free in the abdomen`. */
const isFreeOf = (after: string): boolean =>
  /^[\s-]?free(?!\s+(?:in|fluid|blood|pus|gas|air))\b/iu.test(after);

/** `none` that goes on to a place denies that place: vesicles on the snout, none on the feet. */
const noneHere = /\b(none|nil)\s+(?=on\b|in\b|at\b|elsewhere\b)/giu;

function isAnsweredNo(after: string): boolean {
  const direct = after.replace(/^[\s:=]*(?:(?:were|was|are|is)\s+)?/iu, "");
  return startsWithNo(direct) || hasAny(after.replaceAll(noneHere, " "), denial.after);
}

function startsWithNo(text: string): boolean {
  if (/^0(?![\d.,])/u.test(text) || /^[-–—]\s*$/u.test(text)) return true;
  const answer = occurrences(text, denial.answers)[0];
  if (answer?.index === 0 && answer.end === text.trimEnd().replace(/\.$/u, "").length) return true;
  return occurrences(text, denial.after)[0]?.index === 0;
}

/** A part of a sentence that says no and nothing else. */
function isNo(clause: string): boolean {
  const said = clause.trim();
  const [first] = occurrences(said, denial.after);
  const rest = first?.index === 0 ? said.slice(first.end) : said.replace(patternIn(said, denial.answers), "");
  if (rest === said) return false;
  return rest
    .split(/\s+/u)
    .every((word) => word === "" || /^(?:seen|found|present|there|today|any|here|at|all)$/iu.test(word));
}

interface Around {
  readonly before: string;
  readonly after: string;
}

/** A denial goes on through a list: over its `or`, or to the bare things that follow a denied one. */
function isListed({ before, after }: Around, words: readonly string[], { clauses, at }: Place): boolean {
  const earlier = clauses.slice(0, at);
  const from = earlier.findLastIndex((clause) => hasAny(clause, denial.before));
  if (from < 0) return false;
  const list = clauses.slice(from + 1, at + 1);
  if (hasAny(clauses[from] ?? "", words) && list.every((clause) => isBare(clause, words))) return true;
  if (hasAny(before, denial.or)) return true;
  const nextOr = occurrences(after, denial.or)[0];
  if (nextOr !== undefined) return !hasAny(after.slice(0, nextOr.index), denial.places);
  const later = clauses.slice(at + 1);
  return !hasAny(after, denial.places) && later.some((clause) => hasAny(clause, denial.or));
}

/** Things of the list and nothing else: `blood and ulcers`, but not `black`, which says how the organ is. */
const isBare = (clause: string, words: readonly string[]): boolean =>
  !hasAny(clause, denial.qualities) &&
  clause.replaceAll(patternIn(clause, words), " ").replaceAll(patternIn(clause, denial.and), " ").trim() ===
    "";

/** Looked for, and nothing says that it was found; said afterwards, a denial must follow. */
function isLookedFor({ before, after }: Around, { clauses, at, following }: Place): boolean {
  const earlier = [...clauses.slice(0, at), before].join(", ");
  const later = [after, ...clauses.slice(at + 1), ...following].join(", ");
  const asked = hasAny(earlier, denial.looked);
  if (!asked && !hasAny(later, denial.looked)) return false;
  const denied = hasAny(later, denial.before) || hasAny(later, denial.after);
  return denied || (asked && !hasAny(later, denial.found));
}
