/** The items of a note: names, numbers with their units, and text behind a colon. */
import { firstName, longestName, type Named, nearestName } from "./names.ts";

/** A stretch of the note, in characters from its beginning. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

export type Item = Stretch &
  (
    | { readonly is: "name"; readonly text: string; readonly named: readonly Named[] }
    | { readonly is: "number"; readonly text: string; readonly value: string; readonly unit: string }
    | { readonly is: "text"; readonly key: string; readonly text: string }
    | { readonly is: "unknown"; readonly text: string; readonly message: string }
  );

export type NameItem = Extract<Item, { is: "name" }>;
export type TextItem = Extract<Item, { is: "text" }>;

/** The parts between semicolons and line ends. */
export function partsOf(note: string): Stretch[] {
  return [...note.matchAll(/[^;\r\n]+/g)]
    .map(({ index, 0: text }) => {
      const start = index + (text.length - text.trimStart().length);
      return { start, end: start + text.trim().length };
    })
    .filter(({ start, end }) => end > start);
}

const keyed = /^([\p{L}_-]+(?: [\p{L}_-]+)?)[ \t]*:[ \t]*/u;
const isUnseen = (text: string): boolean => firstName(text.split(" "))?.named[0]?.is === "not-examined";
const isKey = (text: string): boolean =>
  isUnseen(text) || (!text.includes(" ") && firstName([text])?.named[0]?.is !== "organ");
const quantity =
  /^(?<value>\d+(?:[.,]\d+)?(?:[ \t]*[x×][ \t]*\d+(?:[.,]\d+)?)*)(?:[ \t]*(?<unit>mm|cm|ml|l|kg|g|%)(?![\p{L}\p{N}]))?(?![\p{L}\p{N}])/u;
const spread = /^\d+(?:[.,]\d+)?[ \t]*(?:-|–|to|bis|a)[ \t]*\d+(?:[.,]\d+)?[ \t]*(?:mm|cm|ml|l|%)?/u;
const joiners = new Set(["and", "with", "und", "mit", "y", "e", "con", "+", "&"]);
const word = /^[\p{L}\p{N}%'’/.°]+(?:[-_][\p{L}\p{N}]+)*/u;

/** The items between commas and the words that mean one. */
export function piecesOf(note: string, stretch: Stretch): Item[][] {
  const pieces: Item[][] = [[]];
  let at = stretch.start;
  const take = (item: Item): void => {
    pieces.at(-1)?.push(item);
    at = item.end;
  };
  while (at < stretch.end) {
    const rest = note.slice(at, stretch.end);
    const space = /^[ \t:.]+/.exec(rest)?.[0].length ?? 0;
    if (space > 0) at += space;
    else if (rest.startsWith(",")) {
      pieces.push([]);
      at++;
    } else take(itemAt(rest, at, isBare(pieces.at(-1)?.at(-1))));
    const last = pieces.at(-1)?.at(-1);
    if (last?.is === "unknown" && joiners.has(last.text.toLowerCase())) {
      pieces.at(-1)?.pop();
      pieces.push([]);
    }
  }
  return pieces.filter((piece) => piece.length > 0);
}

const isBare = (item: Item | undefined): boolean => item?.is === "number" && item.unit === "";

function itemAt(rest: string, start: number, isUnit: boolean): Item {
  const key = keyed.exec(rest);
  if (key !== null && isKey(key[1] ?? "")) return behindColon(rest, start, key);
  const wide = spread.exec(rest)?.[0];
  if (wide !== undefined)
    return unknown(wide, start, `${wide} is a range. Write one number; the rest goes into note: …`);
  const found = quantity.exec(rest);
  if (found?.groups !== undefined) {
    const { value = "", unit = "" } = found.groups;
    const plain = value
      .replaceAll(",", ".")
      .split(/[x×]/)
      .map((one) => one.trim())
      .join(" x ");
    return { is: "number", text: found[0], value: plain, unit, start, end: start + found[0].length };
  }
  const words: { text: string; end: number }[] = [];
  for (let at = 0; at < rest.length && words.length < longestName; ) {
    const text = word.exec(rest.slice(at))?.[0];
    if (text === undefined) break;
    words.push({ text, end: at + text.length });
    at += text.length;
    const space = /^[ \t]+/.exec(rest.slice(at))?.[0].length ?? 0;
    if (space === 0) break;
    at += space;
  }
  const texts = words.map(({ text }) => text);
  const [first = rest.slice(0, 1)] = texts;
  const joins = texts.length > 0 && joiners.has(first.toLowerCase());
  const match = joins ? undefined : firstName(texts);
  if (match === undefined) return unknown(first, start, joins ? "" : unknownWord(first, isUnit));
  const length = words[match.length - 1]?.end ?? first.length;
  return { is: "name", text: rest.slice(0, length), named: match.named, start, end: start + length };
}

function unknownWord(text: string, isUnit: boolean): string {
  if (isUnit) return `${text} is no unit of a note. Write mm, cm, ml, l, g, kg or %`;
  const meant = text.length < 5 ? undefined : nearestName(text);
  return `"${text}" has no meaning here. ${meant === undefined ? "Free text goes behind site: or note:" : `Did you mean ${meant}?`}`;
}

/** `site: hilus of the kidney` up to the comma, `note: …` and `not examined: …` to the end. */
function behindColon(rest: string, start: number, match: RegExpExecArray): Item {
  const written = match[1] ?? "";
  const key = isUnseen(written) ? "not examined" : written.toLowerCase();
  const behind = rest.slice(match[0].length);
  const text = (
    key === "note" || key === "not examined" ? behind : (/^[^,]*/.exec(behind)?.[0] ?? "")
  ).trim();
  return { is: "text", key, text, start, end: start + match[0].length + text.length };
}

const unknown = (text: string, start: number, message: string): Item => ({
  is: "unknown",
  text,
  message,
  start,
  end: start + Math.max(text.length, 1),
});
