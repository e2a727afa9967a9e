/** What to write for an organ or a system when its value is none of the forms that say how it is. */
import type { ErrorObject } from "ajv";
import { vocabulary } from "../../knowledge/index.ts";
import { nearest } from "../../words/nearest.ts";
import { intendedWord } from "./intended-word.ts";
import { shown } from "./shown.ts";

/** Words that look much like `normal` and mean the contrary. */
const contrary = /^(ab|a|an|un|not?|non|in)[\s_-]?normal/i;

const reasons = new Map([
  ["not_examined", "{not_examined: the reason}"],
  ["not_assessable", "{not_assessable: {because: autolysed}}"],
]);

/** A finding with the lesion that the text is, or with its words so that none is lost. */
function exampleOf(value: unknown): string {
  if (typeof value !== "string") return "{process: enlargement}";
  const process = intendedWord(value, vocabulary.process);
  return process === undefined ? `{process: …, note: ${JSON.stringify(value)}}` : `{process: ${process}}`;
}

/** @returns undefined when the place is not one where the word `normal` may stand */
export function organShape(value: unknown, errors: readonly ErrorObject[]): string | undefined {
  const normal = errors.some(
    ({ keyword, params }) => keyword === "const" && params.allowedValue === "normal",
  );
  if (!normal) return undefined;
  const types = errors.flatMap(({ keyword, params }) => (keyword === "type" ? [String(params.type)] : []));
  const written = `${shown(value)} cannot be read here.`;
  if (typeof value === "string") {
    if (contrary.test(value))
      return `${written} Write what is not normal as findings, such as [{process: enlargement}].`;
    const reason = reasons.get(nearest(value.replaceAll(" ", "_"), [...reasons.keys()]) ?? "");
    if (reason !== undefined && types.length > 0) return `${written} Write ${reason}.`;
    if (intendedWord(value, ["normal"]) !== undefined)
      return `${shown(value)} is not a word known here. Did you mean normal?`;
  }
  if (types.length === 0) return `${written} Write normal, or findings in place of the state.`;
  if (!types.includes("array") && !Array.isArray(value))
    return `${written} Write normal for the whole system, or each organ as a key below it.`;
  if (Array.isArray(value) && !types.includes("array") && types.includes("object"))
    return `${written} Write normal for the whole system, or each organ as a key below it.`;
  return `${written} Write normal, findings such as [${exampleOf(value)}], or {not_examined: the reason}.`;
}
