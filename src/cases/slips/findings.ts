/** The findings that a value tells of in a form that the format does not have. */
import { vocabulary } from "../../knowledge/index.ts";
import { findingKeys } from "../faults/finding-keys.ts";
import { isKeyed, type Keyed } from "../model/path.ts";
import { intendedAnswer } from "./alarm-check.ts";
import { intendedWord, isDenial, wordsWithin } from "./word.ts";

export const isFindingKey = (key: string): boolean => findingKeys.has(key.toLowerCase());

/** Keys whose values show or count something and tell of no lesion. */
const aside = new Set(["photos", "note", "site", "grades", "tracing", "weight", "size"]);

/** A text, a finding without its list, lists in lists; empty for a value that tells of none. */
export function findingsIn(value: unknown): Keyed[] {
  if (typeof value === "string") return findingsOfText(value);
  if (Array.isArray(value)) return value.flatMap(findingsIn);
  if (!isKeyed(value)) return [];
  if (Array.isArray(value.findings)) return findingsIn(value.findings);
  const key = Object.keys(value).find((one) => intendedWord(one, ["process"]) !== undefined);
  if (key !== undefined) return spread({ ...value, process: severalIn(value[key]) });
  return findingsOfKeys(value);
}

/** `{lesion: vesicle}`, `{vesicles: present}`, `{vesicle: coronary band}` */
function findingsOfKeys(value: Keyed): Keyed[] {
  return Object.entries(value).flatMap(([key, one]) => {
    if (aside.has(key)) return [];
    const named = namedByKey(key, one);
    if (named.length > 0) return named;
    const process = typeof one === "string" ? exactProcess(one) : undefined;
    return process === undefined ? [] : [{ ...value, process }];
  });
}

/** The finding of a key that is itself a lesion, unless its value says that there is none. */
export function namedByKey(key: string, value: unknown): Keyed[] {
  const process = exactProcess(key);
  const answer = process === undefined ? undefined : intendedAnswer(value);
  if (process === undefined || answer === undefined || answer === "none") return [];
  return [{ process, ...(typeof value === "string" && answer === "suspected" && { site: value }) }];
}

/** Words of a description that a text may hold beside the lesion. */
const described = ["colour", "consistency", "exudate", "shape", "contour", "duration"] as const;

/** `blisters at the coronary band`; `black, enlarged, friable`: a text without a lesion that is coloured is discoloured. */
function findingsOfText(text: string): Keyed[] {
  const single = exactProcess(text);
  if (single !== undefined) return [{ process: single }];
  if (isDenial(text)) return [];
  const words = described.flatMap((key) => {
    const found = wordsWithin(text, vocabulary[key]);
    return found.length === 0 ? [] : [[key, found] as const];
  });
  const processes = wordsWithin(text, vocabulary.process);
  const coloured = words.some(([key]) => key === "colour" || key === "consistency");
  const process = processes.length === 0 && coloured ? ["discolouration"] : processes;
  if (process.length === 0) return [];
  return spread({ process, ...Object.fromEntries(words), ...(/\s/.test(text.trim()) && { site: text }) });
}

/** A word that is a process in any of its spellings, or, when it is long enough to tell, in a slip of it. */
function exactProcess(word: string): string | undefined {
  if (/\s/.test(word.trim())) return undefined;
  const [exact] = wordsWithin(word, vocabulary.process);
  if (exact !== undefined || isDenial(word) || word.trim().length < longEnough) return exact;
  const near = intendedWord(word, [...vocabulary.process, "normal"]);
  return near === "normal" ? undefined : near;
}

const longEnough = 7;

/** `ruptured vesicles` names two. */
function severalIn(process: unknown): unknown {
  const words = typeof process === "string" ? wordsWithin(process, vocabulary.process) : [];
  return words.length > 1 ? words : process;
}

/** Several words where one belongs are several findings; no more than a person writes. */
function spread(finding: Keyed): Keyed[] {
  let all: Keyed[] = [finding];
  for (const [key, value] of Object.entries(finding))
    if (Array.isArray(value) && isFindingKey(key))
      all = value.slice(0, 6).flatMap((one: unknown) => all.map((other) => ({ ...other, [key]: one })));
  return all.slice(0, 64);
}
