/** What changed from one version of a record to the next: the parts of a case, a visit, a farm or results, one change each. */
import { isDeepStrictEqual } from "node:util";
import { withoutBlanks } from "../cases/model/blanks.ts";
import { isKeyed, type Keyed } from "../cases/model/path.ts";
import { organById, systems } from "../knowledge/index.ts";
import { asKeyed, isWord, pairsOf } from "./pairs.ts";

export type RecordKind = "case" | "visit" | "farm" | "results";

/** A key, or an item of a list as it was known before, with where it stands in the later version, or stood if it was taken out. */
export type Step = string | { readonly index: number; readonly item: unknown };

export interface Change {
  /** `order`: the same items of a list, one after the other in another way. */
  readonly change: "added" | "removed" | "changed" | "order";
  readonly at: readonly Step[];
  readonly before?: unknown;
  readonly after?: unknown;
}

/** Every change between two versions; a blank key is no answer, and the two ways of writing an organ are one. */
export const changesOf = (kind: RecordKind, before: Keyed, after: Keyed): Change[] =>
  changesIn(plainRecord(kind, before), plainRecord(kind, after), []);

const systemIds = new Set(systems.map(({ id }) => id));

/** A record without blanks, its organs written in the long way. */
export function plainRecord(kind: RecordKind, record: Keyed): Keyed {
  const plain = withoutBlanks(record);
  if (kind !== "case") return plain;
  return mapped(plain, (value, key) => {
    if (!systemIds.has(key)) return value;
    if (!isKeyed(value)) return { rest: plainAnswer(value) };
    return mapped(value, (organ, name) => plainOrgan(`${key}.${name}`, organ));
  });
}

const mapped = (keyed: Keyed, change: (value: unknown, key: string) => unknown): Keyed =>
  Object.fromEntries(Object.entries(keyed).map(([key, value]) => [key, change(value, key)]));

function plainOrgan(id: string, entry: unknown): unknown {
  const plain = plainAnswer(entry);
  if (organById(id)?.definition.form !== "paired" || !isKeyed(plain)) return plain;
  return mapped(plain, (value, key) => (sides.has(key) ? plainAnswer(value) : value));
}

const sides = new Set(["left", "right"]);

const plainAnswer = (entry: unknown): unknown =>
  typeof entry === "string" ? { state: entry } : Array.isArray(entry) ? { findings: entry } : entry;

/** What says how an organ is: one of them, and another one is another answer to the same question. */
const answers = ["state", "not_examined", "not_assessable", "findings"];

/** The name of the list or group that a path leads into. */
export const lastKey = (at: readonly Step[]): string => at.findLast((step) => typeof step === "string") ?? "";

function changesIn(before: unknown, after: unknown, at: readonly Step[]): Change[] {
  if (isDeepStrictEqual(before, after)) return [];
  if (isOrgan(at) && isKeyed(before) && isKeyed(after)) return changesOfOrgan(before, after, at);
  const parts = [before, after].filter((value) => value !== undefined);
  if (parts.every(Array.isArray) && (parts.length === 2 || parts.some((list) => list.some(isPart))))
    return changesOfList(listOf(before), listOf(after), at);
  if (parts.every(isKeyed) && (parts.length === 2 || isGroup(at)))
    return changesOfKeys(keyedOf(before), keyedOf(after), at);
  if (before === undefined) return [{ change: "added", at, after }];
  if (after === undefined) return [{ change: "removed", at, before }];
  return [{ change: "changed", at, before, after }];
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const keyedOf = (value: unknown): Keyed => (isKeyed(value) ? value : {});

/** What is told of by itself, even where the whole list came or went. */
const isPart = (item: unknown): boolean => !isWord(item);

/** Keys under which each entry is told by itself, even where all of them came or went. */
const isGroup = ([first, second]: readonly Step[]): boolean =>
  first === undefined ||
  (second === undefined &&
    typeof first === "string" &&
    (systemIds.has(first) || first === "diagnosis" || first === "groups"));

/** Whether an organ, one of its sides, or the rest of a system stands at a place. */
export const isOrgan = (at: readonly Step[]): boolean =>
  at.length > 1 &&
  typeof at[0] === "string" &&
  systemIds.has(at[0]) &&
  (at.length === 2 || (at.length === 3 && typeof at[2] === "string" && isPairedSide(at)));

const isPairedSide = ([system, organ, side]: readonly Step[]): boolean =>
  sides.has(String(side)) && organById(`${String(system)}.${String(organ)}`)?.definition.form === "paired";

function changesOfOrgan(before: Keyed, after: Keyed, at: readonly Step[]): Change[] {
  const [was, is] = [picked(before, true), picked(after, true)];
  const [one, other] = [before, after].map(answersIn);
  const isOther = one !== "" && other !== "" && one !== other;
  if (!isOther) return changesOfKeys(before, after, at);
  return [
    { change: "changed", at, before: was, after: is },
    ...changesOfKeys(picked(before, false), picked(after, false), at),
  ];
}

/** The ways in which an entry says how an organ is. */
export const answersIn = (entry: unknown): string => {
  const plain = plainAnswer(entry);
  return isKeyed(plain) ? answers.filter((key) => Object.hasOwn(plain, key)).join() : "";
};

const picked = (entry: Keyed, isAnswer: boolean): Keyed =>
  Object.fromEntries(Object.entries(entry).filter(([key]) => answers.includes(key) === isAnswer));

const changesOfKeys = (before: Keyed, after: Keyed, at: readonly Step[]): Change[] =>
  [...new Set([...Object.keys(after), ...Object.keys(before)])].flatMap((key) =>
    changesIn(own(before, key), own(after, key), [...at, key]),
  );

const own = (keyed: Keyed, key: string): unknown => (Object.hasOwn(keyed, key) ? keyed[key] : undefined);

function changesOfList(before: readonly unknown[], after: readonly unknown[], at: readonly Step[]): Change[] {
  const list = lastKey(at);
  const pairs = pairsOf(list, before, after);
  const itemsOf = (values: readonly unknown[], index: number | undefined) =>
    index === undefined ? undefined : asKeyed(list, values[index]);
  const changes = pairs.flatMap((pair) => {
    const [was, is] = [itemsOf(before, pair.before), itemsOf(after, pair.after)];
    const step = { index: pair.after ?? pair.before ?? 0, item: was ?? is };
    return changesIn(was, is, [...at, step]);
  });
  const kept = pairs.filter((pair) => pair.before !== undefined && pair.after !== undefined);
  const isMoved = kept.some((pair, index) => (pair.before ?? 0) < (kept[index - 1]?.before ?? 0));
  const isInOrder = !after.every(isWord);
  return isMoved && isInOrder ? [...changes, { change: "order", at, before, after }] : changes;
}
