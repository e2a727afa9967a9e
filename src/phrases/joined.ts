/** What a case says of an organ once a note is added; nothing that stands there is changed. */
import { isDeepStrictEqual } from "node:util";
import { isKeyed, type Keyed } from "../cases/model/path.ts";
import { grouped } from "../words/grouped.ts";
import type { Told } from "./read-note.ts";

/** The entry of an organ, or what of the note does not go with what is said already. */
type Joined = { readonly entry: unknown } | { readonly fault: string; readonly told: Told };

/**
 * @param entry what the case says of the organ; undefined or null where it is blank
 * @param told what the note says of that organ
 */
export function joined(entry: unknown, told: readonly Told[]): Joined {
  let whole: unknown = entry ?? undefined;
  for (const [side, [first, ...others]] of grouped(told, (one) => one.side ?? "")) {
    const isApart = side !== "";
    if (isApart && whole !== undefined && !isKeyed(whole))
      return { fault: `the entry speaks of both sides: ${shown(whole)}`, told: first };
    let entryOf = isApart ? (keysOf(whole)[side] ?? undefined) : whole;
    for (const one of [first, ...others]) {
      const next = withOne(entryOf, one);
      if (typeof next === "string") return { fault: next, told: one };
      entryOf = next.entry;
    }
    whole = isApart ? { ...keysOf(whole), [side]: entryOf } : entryOf;
  }
  return { entry: whole };
}

const keysOf = (value: unknown): Keyed => (isKeyed(value) ? value : {});
const shown = (value: unknown): string => (typeof value === "string" ? value : "a list of findings");
const isBlank = (value: unknown): boolean =>
  value === undefined || value === null || (isKeyed(value) && Object.values(value).every(isBlank));

function withOne(entry: unknown, { says, organ }: Told): { readonly entry: unknown } | string {
  const name = organ.key.replaceAll("_", " ");
  const unseen = ["not_examined", "not_assessable"].find((key) => !isBlank(keysOf(entry)[key]));
  if (unseen !== undefined) return `${name} is ${unseen.replace("_", " ")} there. Take that out first`;
  const isNormal = entry === "normal" || keysOf(entry).state === "normal";
  if ("finding" in says) {
    if (isNormal) return `${name} is normal there, and cannot have a finding. Take one of the two out`;
    if (isBlank(entry))
      return { entry: isKeyed(entry) ? { ...entry, findings: [says.finding] } : [says.finding] };
    const { findings, ...others } = Array.isArray(entry) ? { findings: entry } : keysOf(entry);
    const list: readonly unknown[] = Array.isArray(findings) ? findings : [];
    if (list.some((one) => isDeepStrictEqual(one, says.finding)))
      return `that finding of ${name} stands there already`;
    const all = [...list, says.finding];
    return { entry: Array.isArray(entry) ? all : { findings: all, ...others } };
  }
  const [key, ...inside] = says.path;
  if (key === undefined) {
    if (entry === "normal") return { entry };
    // What must be said of a normal organ as well stays beside the word.
    if (isBlank(entry)) return { entry: isKeyed(entry) ? { ...entry, state: "normal" } : "normal" };
    const others = Object.keys(keysOf(entry)).filter((one) => !isBlank(keysOf(entry)[one]));
    if (isKeyed(entry) && others.every((one) => saysNoLesion(organ, one)))
      return { entry: { state: "normal", ...entry } };
    return `${name} has a finding there, and cannot be normal. Take one of the two out`;
  }
  if (key === "not_examined")
    return isBlank(entry)
      ? { entry: { not_examined: says.value } }
      : `${name} is told there, and was examined`;
  if (isNormal && !saysNoLesion(organ, key))
    return `${name} is normal there, and cannot have ${key.replaceAll("_", " ")}. Take one of the two out`;
  const keyed: Keyed = isKeyed(entry)
    ? entry
    : isNormal
      ? { state: "normal" }
      : Array.isArray(entry)
        ? { findings: entry }
        : {};
  return set(keyed, key, inside, says.value);
}

/** A weight, or where a snout was sawn: it is said of a normal organ as well. */
const saysNoLesion = ({ definition }: Told["organ"], key: string): boolean =>
  ["state", "weight", "note"].includes(key) || definition.observations?.[key]?.required === "always";

function set(
  keyed: Keyed,
  key: string,
  inside: readonly string[],
  value: unknown,
): { readonly entry: Keyed } | string {
  const [next, ...rest] = inside;
  const there = keyed[key];
  if (next !== undefined) {
    const deeper = set(keysOf(there), next, rest, value);
    return typeof deeper === "string" ? `${key}.${deeper}` : { entry: { ...keyed, [key]: deeper.entry } };
  }
  if (!isBlank(there) && JSON.stringify(there) !== JSON.stringify(value))
    return `${key} is ${JSON.stringify(there)} there already. Change it in the file if it is wrong`;
  return { entry: { ...keyed, [key]: value } };
}
