/** What the columns of a new table probably mean, as settings to look through and paste. */
import {
  bareName,
  type CaseColumn,
  caseColumn,
  caseColumns,
  columnNames,
} from "../cases/settings/case-columns.ts";
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
  const parts = wordsOf(head);
  // One letter may stand for many a word.
  if (parts.length === 0 || parts.some((part) => part.length < 2)) return undefined;
  const fitting = caseColumns.filter(({ id, name, title }) => {
    const known = wordsOf(`${id} ${name} ${title}`);
    return parts.every((part) => known.some((word) => word.startsWith(part)));
  });
  const usual = fitting.filter((column) => column.usual);
  const [only, ...others] = usual.length > 0 ? usual : fitting;
  if (only !== undefined) return others.length === 0 ? only : undefined;
  // Of several words the nearest name may mean something else.
  const near = parts.length === 1 ? nearest(bareName(head), columnNames) : undefined;
  return near === undefined ? undefined : caseColumn(near);
}

/** Without what says the unit; sides in full. */
const wordsOf = (text: string): string[] =>
  (bareName(text.replaceAll(/[([][^()[\]]*[)\]]/g, " ")).match(/[\p{L}\d]+/gu) ?? []).map(
    (word) => sides[word] ?? word,
  );

const sides: Readonly<Record<string, string>> = { l: "left", r: "right" };
