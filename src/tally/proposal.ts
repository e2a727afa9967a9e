/** What the columns of a new table probably mean, as settings to look through and paste. */
import {
  bareName,
  type CaseColumn,
  caseColumn,
  caseColumns,
  columnNames,
} from "../cases/settings/case-columns.ts";
import { type MessageKey, messages } from "../generated/knowledge/messages.ts";
import { definitions } from "../knowledge/definitions.ts";
import { organById } from "../knowledge/index.ts";
import { nearest } from "../words/nearest.ts";
import type { HeadColumn } from "./head.ts";

export interface Proposed {
  readonly head: string;
  /** The path of the value; undefined where nothing comes near. */
  readonly to: string | undefined;
  /** Some of what stands below. */
  readonly such: readonly string[];
}

/** @param heads columns of which nobody said what they are */
export function proposal(
  heads: readonly HeadColumn[],
  likelyOf: (head: string) => CaseColumn | undefined = likely,
): Proposed[] {
  const taken = new Set<string>();
  return heads.map(({ head, below }) => {
    const near = likelyOf(head);
    const to = near === undefined || taken.has(near.id) ? undefined : near.id;
    if (to !== undefined) taken.add(to);
    const such = [...new Set(below.map(({ text }) => text))].slice(0, 3);
    return { head, to, such };
  });
}

/** A head has few words. */
const longest = 100;

function likely(head: string): CaseColumn | undefined {
  if (head.length > longest) return undefined;
  const parts = wordsOf(head).filter((part) => !fillers.has(part));
  // One letter may stand for many a word.
  if (parts.length === 0 || parts.some((part) => part.length < 2)) return undefined;
  const fitting = caseColumns.flatMap((column) => {
    const { own, organ } = searched(column);
    const isIn = (known: readonly string[]) => (part: string) => known.some((word) => isMeant(part, word));
    const isFitting = parts.every(isIn([...own, ...organ]));
    return isFitting ? [{ column, own: parts.filter(isIn(own)).length }] : [];
  });
  const usual = fitting.filter(({ column }) => column.usual);
  const near = usual.length > 0 ? usual : fitting;
  // The name of an organ tells of parts that have a column of their own: Nasenmuscheln und Scheidewand.
  const most = Math.max(...near.map(({ own }) => own));
  const [only, ...others] = near.filter(({ own }) => own === most);
  if (only !== undefined) return others.length === 0 ? only.column : undefined;
  // Of several words the nearest name may mean something else.
  const name = parts.length === 1 ? nearest(bareName(head), columnNames) : undefined;
  return name === undefined ? undefined : caseColumn(name);
}

/** Begun, or with an ending of number or case: kran, Ohrmarken. */
const isMeant = (part: string, word: string): boolean =>
  word.startsWith(part) || (word.length > 3 && part.startsWith(word) && part.length <= word.length + 2);

/** Words of heads that say nothing of what is below. */
const fillers: ReadonlySet<string> = new Set([
  "nr",
  "no",
  "der",
  "des",
  "de",
  "del",
  "la",
  "las",
  "los",
  "el",
]);

interface Searched {
  /** Words of the value itself. */
  readonly own: readonly string[];
  /** Words of the organ that it is of. */
  readonly organ: readonly string[];
}

const known = new Map<CaseColumn, Searched>();

/** By what a column is found: its English words, and those that notes and sheets have for the same in other languages. */
function searched(column: CaseColumn): Searched {
  const there = known.get(column);
  if (there !== undefined) return there;
  const { id, name, title, path } = column;
  const [system, key, ...below] = path.map(String);
  const organ = organById(`${system}.${key}`);
  const steps = (organ === undefined ? path.slice(-1).map(String) : below).flatMap((step) => step.split("_"));
  const made = {
    own: wordsOf([id, name, title, ...steps.flatMap(otherNames)].join(" ")),
    organ: wordsOf(
      Object.values(organ?.definition.names ?? {})
        .flat()
        .join(" "),
    ),
  };
  known.set(column, made);
  return made;
}

function otherNames(word: string): readonly string[] {
  const { record, process, term } = definitions;
  const said = Object.values(messages).flatMap(({ say }) => {
    const text = Object.hasOwn(say, word) ? say[word as MessageKey] : "";
    // A sentence is no name.
    return text.split(" ").length > 2 ? [] : text;
  });
  const named = [record[word], process[word], term[word]].flatMap((one) =>
    [one?.also, one?.de, one?.es].flatMap((names) => names ?? []),
  );
  return [...said, ...named];
}

/** Without what says the unit, and without marks on letters; sides in full. */
const wordsOf = (text: string): string[] =>
  (
    bareName(text.replaceAll(/[([][^()[\]]*[)\]]/g, " "))
      .normalize("NFD")
      .replaceAll(/\p{M}/gu, "")
      .replaceAll("ß", "ss")
      .match(/[\p{L}\d]+/gu) ?? []
  ).map((word) => sides[word] ?? word);

const sides: Readonly<Record<string, string>> = {
  l: "left",
  li: "left",
  izq: "left",
  r: "right",
  re: "right",
  dcho: "right",
  dcha: "right",
};
