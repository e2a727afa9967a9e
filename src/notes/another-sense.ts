/** Words of an alarm that speak of another time, of other beings and things, or of a disease in general. */
import { alarmSenses, denial } from "../knowledge/index.ts";
import { type Affirmed, hasAny, occurrences } from "./index.ts";

const { past, present, pigs, others, examples_of: diseases } = alarmSenses;

/** @param date of the visit: years before it are past */
export function isElsewhere(word: Affirmed, text: string, date: string | undefined): boolean {
  return isPast(word, date) || isOther(word.clause) || isExample(word, text);
}

/** In the same part of the sentence, or as a short part beside it: "in 2019, blisters on the feet". */
function isPast({ clause, clauses }: Affirmed, date: string | undefined): boolean {
  if (clauses.some((part) => hasAny(part, present))) return false;
  const at = clauses.indexOf(clause);
  const beside = [clauses[at - 1], clauses[at + 1]].filter(
    (part) => part !== undefined && part.trim().split(/\s+/u).length <= fewWords,
  );
  return [clause, ...beside].some((part) => part !== undefined && tellsPast(part, date));
}

const fewWords = 4;

function tellsPast(text: string, date: string | undefined): boolean {
  if (hasAny(text, past)) return true;
  const years = text.match(/(?<![\d./-])(?:19|20)\d{2}(?![\d/-])/gu) ?? [];
  return date !== undefined && years.some((year) => year < date.slice(0, 4));
}

const isOther = (clause: string): boolean => hasAny(clause, others) && !hasAny(clause, pigs);

/** `FMD: vesicles`, in a text that goes on to deny. */
function isExample({ clause }: Affirmed, text: string): boolean {
  const [disease] = occurrences(clause.trimStart(), diseases);
  if (disease?.index !== 0 || !clause.trimStart().slice(disease.end).startsWith(":")) return false;
  const after = text.slice(text.indexOf(clause) + clause.length);
  return hasAny(after, denial.before) || hasAny(after, denial.after);
}
