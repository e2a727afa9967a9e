/**
 * Findings that stand in a form that the format does not have, put into the one it has: a word in place of the organ,
 * a finding without its list, lists in lists, sides of an organ that has none, several words where one belongs.
 */
import { organs, systems, vocabulary } from "../knowledge/index.ts";
import { findingKeys } from "./finding-keys.ts";
import { isDenial, meantWord, wordsWithin } from "./meant-word.ts";

type Keyed = Record<string, unknown>;

const isKeyed = (value: unknown): value is Keyed =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Puts the organs of a case right, in place. */
export function putOrgansRight(document: Keyed): void {
  for (const { id } of systems) {
    // What is said of the outside without an organ is said of the skin.
    if (id === "external" && !isKeyed(document[id])) {
      const skin = findingsIn(document[id]);
      if (skin.length > 0) document[id] = { skin };
    }
    const system = document[id];
    if (!isKeyed(system)) continue;
    for (const { key, definition } of organs.filter((one) => one.system === id))
      if (Object.hasOwn(system, key)) system[key] = organRight(system[key], definition.form === "paired");
  }
}

function organRight(value: unknown, paired: boolean): unknown {
  if (!isKeyed(value)) {
    const findings = findingsIn(value);
    return findings.length > 0 ? findings : value;
  }
  const rest: [string, unknown][] = [];
  const own: [string, unknown][] = [];
  const findings: Keyed[] = [];
  for (const [key, entry] of Object.entries(value)) {
    const isSide = key === "left" || key === "right";
    if (isSide && paired) rest.push([key, organRight(entry, false)]);
    else if (key === "findings") findings.push(...findingsIn(entry));
    else if (isFindingKey(key) && !isKeyed(entry)) own.push([key, entry]);
    else {
      const said = isSide || key === "state" ? findingsIn(entry) : namedByKey(key, entry);
      findings.push(...said);
      if (said.length === 0) rest.push([key, entry]);
    }
  }
  findings.push(...findingsIn(Object.fromEntries(own)));
  return { ...Object.fromEntries(rest), ...(findings.length > 0 && { findings }) };
}

/** `vesicles: present` */
function namedByKey(key: string, entry: unknown): Keyed[] {
  const process = exactProcess(key);
  const denied =
    entry === false || entry === null || (typeof entry === "string" && (entry === "" || isDenial(entry)));
  return process === undefined || denied ? [] : [{ process }];
}

/** The findings that a value tells of; empty when it tells of none. */
function findingsIn(value: unknown): Keyed[] {
  if (typeof value === "string")
    return wordsWithin(value, vocabulary.process).map((process) => ({ process }));
  if (Array.isArray(value)) return value.flatMap(findingsIn);
  if (!isKeyed(value)) return [];
  if (Array.isArray(value.findings)) return findingsIn(value.findings);
  const key = Object.keys(value).find((one) => meantWord(one, ["process"]) !== undefined);
  if (key !== undefined) return spread({ ...value, process: severalIn(value[key]) });
  // The lesion under a key of another name, such as `lesion: vesicle`.
  const process = Object.values(value).flatMap((one) =>
    typeof one === "string" ? (exactProcess(one) ?? []) : [],
  )[0];
  return process === undefined ? [] : [{ ...value, process }];
}

/** A word that is a process in any of its spellings; what is only near to one is left to the schema. */
const exactProcess = (word: string): string | undefined =>
  /\s/.test(word.trim()) ? undefined : wordsWithin(word, vocabulary.process)[0];

/** `ruptured vesicles` names two. */
function severalIn(process: unknown): unknown {
  const words = typeof process === "string" ? wordsWithin(process, vocabulary.process) : [];
  return words.length > 1 ? words : process;
}

const isFindingKey = (key: string): boolean => findingKeys.has(key.toLowerCase());

/** Several words where one belongs are several findings; no more than a person writes. */
function spread(finding: Keyed): Keyed[] {
  let all: Keyed[] = [finding];
  for (const [key, value] of Object.entries(finding))
    if (Array.isArray(value) && isFindingKey(key))
      all = value.slice(0, 6).flatMap((one: unknown) => all.map((other) => ({ ...other, [key]: one })));
  return all.slice(0, 36);
}

/** Two values for one key, where a mistyped key stands beside the right one: what both tell. */
export function merged(there: unknown, added: unknown): unknown {
  if (there === undefined || there === null || there === "normal") return added;
  if (added === null || added === "normal") return there;
  const findings = [...findingsIn(there), ...findingsIn(added)];
  if (Array.isArray(there) || Array.isArray(added)) return findings.length > 0 ? findings : there;
  return isKeyed(there) && isKeyed(added) ? mergedKeys(there, added) : there;
}

const mergedKeys = (there: Keyed, added: Keyed): Keyed => {
  const keys = [...new Set([...Object.keys(there), ...Object.keys(added)])];
  return Object.fromEntries(keys.map((key) => [key, merged(there[key], added[key])]));
};
