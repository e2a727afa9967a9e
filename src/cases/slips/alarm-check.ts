/** Answers of the alarm check that were written another way: yes, a list of what was seen, words of their own. */
import { denial, slipWords, vocabulary } from "../../knowledge/index.ts";
import { isKeyed, type Keyed } from "../model/path.ts";
import { intendedWord, isDenial, wordsWithin } from "./word.ts";

type Answer = "none" | "suspected" | "present";

const answers: readonly Answer[] = ["none", "suspected", "present"];
const signs = Object.entries(slipWords.alarm_signs);

/** Puts the alarm check of a case right, in place. What was seen and is told in other words is suspected. */
export function putAlarmCheckRight(document: Keyed): void {
  for (const group of ["external", "selection", "pig"]) gather(document, document[group]);
  if (document.alarm_check !== undefined && document.alarm_check !== null)
    document.alarm_check = intendedCheck(document.alarm_check);
}

/** Questions of the check that stand in another group. */
function gather(document: Keyed, group: unknown): void {
  if (!isKeyed(group)) return;
  for (const [sign] of signs)
    if (Object.hasOwn(group, sign)) {
      document.alarm_check = [document.alarm_check, { [sign]: group[sign] }];
      delete group[sign];
    }
}

function intendedCheck(check: unknown): unknown {
  if (Array.isArray(check)) return mostOf(check.map(intendedCheck));
  if (typeof check === "string") {
    const [seen, answer] = [signsIn(check), intendedAnswer(check)];
    const denied = answer === "none" || (answer === undefined && isDenial(check));
    return seen.length === 0 || denied ? check : allPresent(seen);
  }
  if (!isKeyed(check)) return check;
  return mostOf(Object.entries(check).map(([key, value]) => intendedEntry(key, value)));
}

/** One key of the check: a question, another word for one, or an answer with what was seen as its value. */
function intendedEntry(key: string, value: unknown): Keyed {
  const known = Object.keys(slipWords.alarm_signs);
  const named = known.includes(key) ? [key] : signsIn(key.replaceAll(/[_-]+/g, " "));
  if (named.length > 0) {
    const answer = intendedAnswer(value);
    return Object.fromEntries(named.map((sign) => [sign, answer ?? value]));
  }
  const answer = intendedWord(key, answers);
  const seen =
    answer === undefined || answer === "none" ? [] : [value].flat().flatMap((one) => signsIn(String(one)));
  return seen.length > 0 ? allPresent(seen) : { [key]: value };
}

const allPresent = (seen: readonly string[]): Keyed =>
  Object.fromEntries(seen.map((sign) => [sign, "present"]));

/** The parts of a check put together; of two answers to one question the graver. */
function mostOf(parts: readonly unknown[]): Keyed {
  const whole: Keyed = {};
  for (const part of parts.filter(isKeyed))
    for (const [key, value] of Object.entries(part))
      whole[key] = graver(value, whole[key]) ? value : whole[key];
  return whole;
}

const graver = (value: unknown, than: unknown): boolean =>
  than === undefined || answers.indexOf(value as Answer) > answers.indexOf(than as Answer);

/** The questions that a text names. */
const signsIn = (text: string): string[] =>
  signs.filter(([sign, words]) => sign === text || hasWord(text, words)).map(([sign]) => sign);

const hasWord = (text: string, words: readonly string[]): boolean => {
  const said: readonly string[] = text.toLowerCase().match(/[\p{L}\d-]+/gu) ?? [];
  return words.some((word) => said.includes(word));
};

/**
 * The answer that a value gives: whether something was seen.
 * @returns undefined when nothing can be told
 */
export function intendedAnswer(value: unknown): Answer | undefined {
  if (typeof value === "boolean") return value ? "present" : "none";
  if (typeof value === "number") return value > 0 ? "present" : "none";
  if (typeof value === "string") return intendedText(value);
  if (typeof value !== "object" || value === null) return undefined;
  const parts = Array.isArray(value)
    ? value.map(intendedAnswer)
    : Object.entries(value).map(([key, one]: [string, unknown]) => intendedKey(key, one));
  return [...answers].reverse().find((answer) => parts.includes(answer));
}

/** `{present: yes}`, `{snout: none, feet: suspected}`; `{checked: true}` says nothing. */
function intendedKey(key: string, value: unknown): Answer | undefined {
  const answer = intendedAnswer(value);
  const named = answers.find((word) => word === intendedWord(key, answers));
  if (named === undefined) return hasWord(key, [...slipWords.places, ...lesions]) ? answer : undefined;
  return answer === "none" ? "none" : named;
}

const lesions: readonly string[] = [...vocabulary.process, ...Object.values(slipWords.alarm_signs).flat()];

/** A text part by part, so that `no, but erosions on the snout` is not a no. */
function intendedText(text: string): Answer | undefined {
  const exact = answerWord(text);
  if (/\?\s*$/.test(text)) return exact === "present" ? exact : "suspected";
  if (exact !== undefined) return exact;
  if (/^\s*\d+\s*$/.test(text)) return Number(text) > 0 ? "present" : "none";
  if (saysAny(text, denial.no_denial) || saysAny(text, denial.doubt)) return "suspected";
  const parts = text.split(new RegExp(`[,;:?()]|\\b(?:${denial.ends.join("|")})\\b`, "iu")).map(intendedPart);
  return [...answers].reverse().find((answer) => parts.includes(answer));
}

function intendedPart(part: string): Answer | undefined {
  const exact = answerWord(part);
  if (exact !== undefined) return exact;
  if (isDenial(part)) return undefined;
  const named = wordsWithin(part, answers).find((word) => word !== "none");
  if (named !== undefined) return named === "present" ? "present" : "suspected";
  return hasWord(part, slipWords.places) || wordsWithin(part, vocabulary.process).length > 0
    ? "suspected"
    : undefined;
}

const answerWord = (text: string): Answer | undefined => {
  const word = intendedWord(text.trim().replace(/\.$/, ""), answers);
  return answers.find((answer) => answer === word);
};

const saysAny = (text: string, phrases: readonly string[]): boolean =>
  phrases.some((phrase) => ` ${text.toLowerCase()} `.includes(` ${phrase} `));
