/**
 * Organs whose findings stand in a form or a place that the format does not have: a word in place of the organ, sides of
 * an organ that has none, an organ under the name that people give it.
 */
import { interpretationWords, organById, organs, type PlacedOrgan, systems } from "../../knowledge/index.ts";
import { isKeyed, type Keyed } from "../model/path.ts";
import { findingsIn, isFindingKey, namedByKey } from "./findings.ts";
import { intendedKey } from "./word.ts";

/** Puts the organs of a case right, in place. */
export function putOrgansRight(document: Keyed): void {
  for (const { id } of systems) {
    document[id] = systemRight(id, document[id]);
    const system = document[id];
    if (system === undefined) delete document[id];
    if (!isKeyed(system)) continue;
    for (const organ of organs.filter((one) => one.system === id))
      if (Object.hasOwn(system, organ.key)) system[organ.key] = organRight(system[organ.key], organ);
  }
  moveNamed(
    document,
    document,
    systems.map(({ id }) => id),
  );
  for (const { id } of systems) {
    const own = organs.filter(({ system }) => system === id).map(({ key }) => key);
    const system = document[id];
    if (isKeyed(system)) moveNamed(document, system, own);
  }
}

/** What is said of a system without an organ: a list of organs, or, of the outside, what is seen on the skin. */
function systemRight(id: string, value: unknown): unknown {
  if (Array.isArray(value) && value.length > 0 && value.every((one) => isKeyed(one) && holdsOrgan(id, one)))
    return Object.fromEntries(value.flatMap((one: Keyed) => Object.entries(one)));
  if (id !== "external" || (isKeyed(value) && !Object.hasOwn(value, "process"))) return value;
  const skin = findingsIn(value);
  return skin.length > 0 ? { skin } : value;
}

const holdsOrgan = (id: string, value: Keyed): boolean =>
  Object.keys(value).some((key) => organById(`${id}.${key}`) !== undefined);

/**
 * Moves findings under an everyday name (claws, tongue, left_kidney) to the organ that it names. A key that is near to
 * one of the group is a slip of that one.
 */
function moveNamed(document: Keyed, group: Keyed, keys: readonly string[]): void {
  for (const [key, value] of Object.entries(group)) {
    const organ = intendedKey(key, keys) === undefined ? organNamed(key) : undefined;
    const findings = organ === undefined ? [] : findingsIn(isKeyed(value) ? [value] : value);
    if (organ === undefined || findings.length === 0) continue;
    delete group[key];
    const system = document[organ.system];
    const home = isKeyed(system) ? system : {};
    home[organ.key] = merged(home[organ.key], findings);
    document[organ.system] = home;
  }
}

const plain = (name: string): string =>
  name
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== "lymph")
    .map((word) => word.replace(/ae$/, "a").replace(/(?<=..)s$/, ""))
    .join(" ");

/** What organs are called, by the name of the format and by everyday names. */
const called = new Map<string, string | undefined>([
  ...organs.map(({ id, key }) => [plain(key), id] as const),
  ...Object.entries(interpretationWords.organ_names).map(([name, [id]]) => [plain(name), id] as const),
]);

/** @returns undefined for a name that means no organ */
function organNamed(key: string): PlacedOrgan | undefined {
  const words = plain(key).split(" ");
  const names = [words.join(" "), words.slice(1).join(" "), words.at(-1) ?? ""];
  return organById(names.map((name) => called.get(name)).find((id) => id !== undefined) ?? "");
}

/** Keys that every organ may have; others are its observations. */
const common = new Set([
  "not_examined",
  "not_assessable",
  "weight",
  "size",
  "tracing",
  "photos",
  "note",
  "grades",
]);

function organRight(value: unknown, organ: PlacedOrgan): unknown {
  if (!isKeyed(value)) {
    const findings = findingsIn(value);
    return findings.length > 0 ? findings : value;
  }
  const paired = organ.definition.form === "paired";
  const known = (key: string): boolean =>
    common.has(key) || Object.hasOwn(organ.definition.observations ?? {}, key);
  const rest: [string, unknown][] = [];
  const own: [string, unknown][] = [];
  const findings: Keyed[] = [];
  for (const [key, entry] of Object.entries(value)) {
    if (paired && (key === "left" || key === "right")) rest.push([key, sideRight(entry)]);
    else if (key === "findings") findings.push(...findingsIn(entry));
    else if (isFindingKey(key) && !isKeyed(entry)) own.push([key, entry]);
    else {
      const said = known(key) ? [] : (nonEmpty(namedByKey(key, entry)) ?? findingsIn(entry));
      findings.push(...said);
      if (said.length === 0) rest.push([key, entry]);
    }
  }
  findings.push(...findingsIn(Object.fromEntries(own)));
  return { ...Object.fromEntries(rest), ...(findings.length > 0 && { findings }) };
}

/** A side is a state of its own; findings beside it stay below it. */
function sideRight(entry: unknown): unknown {
  const findings = isKeyed(entry) && !Object.hasOwn(entry, "process") ? [] : findingsIn(entry);
  return findings.length > 0 ? findings : entry;
}

const nonEmpty = <T>(list: readonly T[]): readonly T[] | undefined => (list.length > 0 ? list : undefined);

/** Two values for one key, where a mistyped key stands beside the right one: what both tell. */
export function merged(there: unknown, added: unknown): unknown {
  if (there === undefined || there === null || there === "normal" || there === "none") return added;
  if (added === null || added === "normal") return there;
  const findings = [...findingsIn(there), ...findingsIn(added)];
  if (Array.isArray(there) || Array.isArray(added)) return findings.length > 0 ? findings : there;
  return isKeyed(there) && isKeyed(added) ? mergedKeys(there, added) : there;
}

const mergedKeys = (there: Keyed, added: Keyed): Keyed => {
  const keys = [...new Set([...Object.keys(there), ...Object.keys(added)])];
  return Object.fromEntries(keys.map((key) => [key, merged(there[key], added[key])]));
};
