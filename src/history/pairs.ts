/** Which items of two lists are the same thing: samples by their id, findings by process and place, diagnoses by what they name. */
import { isDeepStrictEqual } from "node:util";
import { isKeyed } from "../cases/model/path.ts";
import { grouped } from "../words/grouped.ts";

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
  seals: [["by", "at"]],
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
  const [was, is] = [before, after].map((items) => items.map((item) => asKeyed(list, item)));
  const left = { before: new Set(before.keys()), after: new Set(after.keys()) };
  const pair = (one: number, other: number): void => {
    pairs.push({ before: one, after: other });
    left.before.delete(one);
    left.after.delete(other);
  };
  /** Pairs items of one key, the first with the first. */
  const match = (keyOf: (item: unknown) => string | undefined): void => {
    const waiting = grouped([...left.after], (at) => keyOf(is?.[at]));
    for (const one of left.before) {
      const key = keyOf(was?.[one]);
      const other = key === undefined ? undefined : waiting.get(key)?.shift();
      if (other !== undefined) pair(one, other);
    }
  };
  const matchInPlace = (isSame: (one: unknown, other: unknown) => boolean): void => {
    for (const at of left.before) if (left.after.has(at) && isSame(was?.[at], is?.[at])) pair(at, at);
  };
  const matchBy = (keys: readonly string[]): void =>
    match((item) =>
      isKeyed(item) && keys.some((key) => item[key] !== undefined)
        ? inOneForm(keys.map((key) => item[key] ?? null))
        : undefined,
    );
  match(inOneForm);
  const [surest = [], ...others] = identities[list] ?? [];
  matchBy(surest);
  if (!isStrict) {
    matchInPlace(isNearly);
    if (left.before.size * left.after.size <= mostCompared)
      for (const one of left.before) {
        const other = [...left.after].find((at) => isNearly(was?.[one], is?.[at]));
        if (other !== undefined) pair(one, other);
      }
  }
  others.forEach(matchBy);
  if (!isStrict) {
    // A sentence that stands where another stood is that one put in other words.
    const isProse = (item: unknown): boolean =>
      isKeyed(item) ? keyOfText[list] !== undefined : typeof item === "string" && !isWord(item);
    matchInPlace((one, other) => isProse(one) && isProse(other));
  }
  return [
    ...pairs,
    ...[...left.before].map((at) => ({ before: at, after: undefined })),
    ...[...left.after].map((at) => ({ before: undefined, after: at })),
  ].sort((a, b) => (a.after ?? a.before ?? 0) - (b.after ?? b.before ?? 0));
}

/** Beyond this nobody is served by looking for likenesses. */
const mostCompared = 40_000;

/** The same text for the same value, in whatever order its keys stand. */
const inOneForm = (value: unknown): string =>
  JSON.stringify(value, (_, item: unknown) =>
    isKeyed(item) ? Object.fromEntries(Object.entries(item).sort(([a], [b]) => (a < b ? -1 : 1))) : item,
  );

/** All but one of its keys say the same. */
function isNearly(one: unknown, other: unknown): boolean {
  if (!isKeyed(one) || !isKeyed(other)) return false;
  const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])];
  const same = keys.filter((key) => isDeepStrictEqual(one[key], other[key])).length;
  return same >= 2 && same >= keys.length - 1;
}
