/** Which items of two lists are the same thing: samples by their id, findings by process and place, diagnoses by what they name. */
import { isDeepStrictEqual } from "node:util";
import { isKeyed } from "../cases/model/path.ts";

/** Positions in the earlier and in the later list; one of them is missing where an item was added or taken out. */
export interface Pair {
  readonly before: number | undefined;
  readonly after: number | undefined;
}

/** By the name of a list: keys that tell its items apart, the surest first. */
const identities: Readonly<Record<string, readonly (readonly string[])[]>> = {
  samples: [["id"]],
  findings: [["process", "side", "site"], ["process", "side"], ["process", "site"], ["process"]],
  morphologic: [["text"]],
  aetiologic: [["text"], ["agent"]],
  disease: [["text"], ["disease"]],
  authority: [["at", "stands"], ["at"]],
  readings: [["reader"]],
  photos: [["file"]],
  accepted: [["rule", "at"]],
  seals: [["by", "at", "because"]],
  not_examined: [["because"]],
  environment: [["group", "at"], ["group"]],
  tests: [["test", "from"]],
  treatments: [["group", "with"], ["with"]],
  recommendations: [["do"]],
  parcels: [["sent"], ["samples"]],
  entries: [
    ["sample", "pool", "pair", "test", "agent", "analyte"],
    ["sample", "pool", "pair", "test", "agent"],
    ["sample", "pool", "pair", "test"],
  ],
  antibiogram: [["drug"]],
  lesions: [["organ", "process"]],
};

/** Lists of which an item may be no more than its text: the key under which that text stands otherwise. */
const keyOfText: Readonly<Record<string, string>> = {
  morphologic: "text",
  aetiologic: "text",
  disease: "text",
  treatments: "with",
  recommendations: "do",
  photos: "file",
};

/** An item with keys, where its list knows one for a mere text. */
export function asKeyed(list: string, item: unknown): unknown {
  const key = keyOfText[list];
  return key !== undefined && typeof item === "string" ? { [key]: item } : item;
}

/** Words of the format and names; their order says nothing, and one of them is not another one changed. */
export const isWord = (item: unknown): boolean => !isKeyed(item) && !/\s/.test(String(item));

/**
 * @param list its name
 * @param isStrict whether two items are the same only where all says so, as of two that were added apart
 */
export function pairsOf(
  list: string,
  before: readonly unknown[],
  after: readonly unknown[],
  isStrict = false,
): Pair[] {
  const pairs: { before: number; after: number }[] = [];
  const left = { before: before.map((_, at) => at), after: after.map((_, at) => at) };
  const match = (isSame: (one: unknown, other: unknown, at: number, otherAt: number) => boolean): void => {
    for (const one of [...left.before]) {
      const other = left.after.find((at) =>
        isSame(asKeyed(list, before[one]), asKeyed(list, after[at]), one, at),
      );
      if (other === undefined) continue;
      pairs.push({ before: one, after: other });
      left.before = left.before.filter((at) => at !== one);
      left.after = left.after.filter((at) => at !== other);
    }
  };
  match((one, other) => isDeepStrictEqual(one, other));
  const [surest = [], ...others] = identities[list] ?? [];
  const matchBy = (keys: readonly string[]): void =>
    match(
      (one, other) =>
        isKeyed(one) &&
        isKeyed(other) &&
        keys.some((key) => one[key] !== undefined) &&
        keys.every((key) => isDeepStrictEqual(one[key], other[key])),
    );
  matchBy(surest);
  if (!isStrict) {
    match((one, other, at, otherAt) => at === otherAt && isNearly(one, other));
    match(isNearly);
  }
  others.forEach(matchBy);
  if (!isStrict) {
    // A sentence that stands where another stood is that one put in other words.
    const isProse = (item: unknown): boolean =>
      isKeyed(item) ? keyOfText[list] !== undefined : typeof item === "string" && !isWord(item);
    match((one, other, at, otherAt) => at === otherAt && isProse(one) && isProse(other));
  }
  return [
    ...pairs,
    ...left.before.map((at) => ({ before: at, after: undefined })),
    ...left.after.map((at) => ({ before: undefined, after: at })),
  ].sort((a, b) => (a.after ?? a.before ?? 0) - (b.after ?? b.before ?? 0));
}

/** All but one of its keys say the same. */
function isNearly(one: unknown, other: unknown): boolean {
  if (!isKeyed(one) || !isKeyed(other)) return false;
  const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])];
  const same = keys.filter((key) => isDeepStrictEqual(one[key], other[key])).length;
  return same >= 2 && same >= keys.length - 1;
}
