/** Answers of the alarm check that were written another way: yes, a list of what was seen, words of their own. */
import { isDenial, meantWord, saysNothing, wordsWithin } from "./meant-word.ts";

const answers = ["none", "suspected", "present"] as const;
const signs = ["vesicles", "skin_haemorrhage", "throat_swelling", "bloody_orifices"] as const;

/** Puts the alarm check of a case right, in place. What was seen and is told in other words is suspected. */
export function putAlarmCheckRight(document: Record<string, unknown>): void {
  const check = document.alarm_check;
  if (typeof check === "string" || Array.isArray(check)) {
    const seen = [check]
      .flat()
      .flatMap((one: unknown) => (typeof one === "string" ? (nearSign(one) ?? []) : []));
    if (seen.length > 0) document.alarm_check = Object.fromEntries(seen.map((sign) => [sign, "present"]));
  } else if (typeof check === "object" && check !== null)
    document.alarm_check = Object.fromEntries(
      Object.entries(check).map(([key, value]: [string, unknown]) => [key, answerMeant(value) ?? value]),
    );
}

const nearSign = (text: string): string | undefined =>
  isDenial(text) ? undefined : (signs.find((sign) => sign === text) ?? meantWord(text, signs));

/** @returns undefined when nothing can be told */
function answerMeant(value: unknown): string | undefined {
  if (typeof value === "boolean") return value ? "present" : "none";
  if (typeof value === "number") return value > 0 ? "present" : "none";
  if (typeof value === "string") {
    const word = meantWord(value, answers);
    if (word !== undefined) return word;
    if (value.trim() === "" || isDenial(value)) return undefined;
    return wordsWithin(value, answers)[0] ?? (saysNothing(value) ? undefined : "suspected");
  }
  if (typeof value !== "object" || value === null) return undefined;
  const parts = Array.isArray(value)
    ? value.map(answerMeant)
    : Object.entries(value).map(([key, one]: [string, unknown]) =>
        answerMeant(one) === "none" ? "none" : (meantWord(key, answers) ?? answerMeant(one)),
      );
  return parts.includes("present") ? "present" : parts.find((part) => part !== undefined);
}
