/** The edits of values and keys that are certain. */
import { suggestion } from "../cases/faults/suggestion.ts";
import { withoutCurly } from "../cases/faults/typing-faults.ts";
import { formatPath, type Path } from "../cases/index.ts";
import type { SourceDocument } from "../cases/yaml/document.ts";
import { organs, sampleRules, systems } from "../knowledge/index.ts";
import { type FixedKind, keysAt, probe } from "./probe.ts";
import { lineStarts, type TextEdit } from "./text-edit.ts";

/** One certain change of a document. */
export interface ValueEdit extends TextEdit {
  /** The place of the value, or of the key. */
  readonly path: Path;
  readonly line: number;
  readonly message: string;
  /** The value that stands at the path afterwards, or the name of the key. */
  readonly becomes: { readonly value: string } | { readonly key: string };
}

/** @param text the text that the document was read from */
export function valueEdits(
  text: string,
  document: SourceDocument,
  kind: FixedKind,
  value: Record<string, unknown>,
): ValueEdit[] {
  const lines = lineStarts(text);
  const placed = (path: Path, points: "key" | "value"): Placed => {
    const { line, column, length } = points === "key" ? document.whereKey(path) : document.where(path);
    const start = (lines[line - 1] ?? 0) + column - 1;
    return { line, start, end: start + length, raw: text.slice(start, start + length) };
  };
  const { texts, keys } = probe(kind, value);
  const edits: ValueEdit[] = [];
  for (const { path, text: written, words, patterns, free } of texts) {
    const place = placed(path, "value");
    const quote = quoteOf(place.raw, written);
    if (quote === undefined) continue;
    const straight = quote === "" ? withoutCurly(written) : undefined;
    if (straight !== undefined && !/["\\]/.test(straight)) {
      edits.push(edit(path, place, `"${straight}"`, straight));
      continue;
    }
    const word = sameWord(written, [...words, ...sampleNames(patterns)]);
    const quantity = word === undefined ? sameQuantity(written, patterns) : undefined;
    const fits = free || patterns.some((pattern) => new RegExp(pattern, "u").test(written));
    if (word !== undefined) edits.push(edit(path, place, `${quote}${word}${quote}`, word));
    // A quantity needs no quotes.
    else if (quantity !== undefined) edits.push(edit(path, place, quantity, quantity));
    else if (quote === "" && fits && !words.includes(written) && isReadOtherwise(written))
      edits.push(edit(path, place, `"${written}"`, written));
  }
  const taken = new Set<string>();
  for (const { path, key, known } of keys) {
    const place = placed([...path, key], "key");
    const quote = quoteOf(place.raw, key);
    const intended = sameWord(key, known);
    if (quote === undefined || intended === undefined) continue;
    const at = [...path, intended];
    if (keysAt(value, path).includes(intended) || taken.has(formatPath(at))) continue;
    taken.add(formatPath(at));
    edits.push({
      ...edit([...path, key], place, `${quote}${intended}${quote}`, intended),
      message: `${formatPath([...path, key])} -> ${formatPath(at)}`,
      becomes: { key: intended },
    });
  }
  return edits;
}

interface Placed {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly raw: string;
}

function edit(path: Path, { line, start, end, raw }: Placed, text: string, value: string): ValueEdit {
  const message = `${formatPath(path)}: ${raw} -> ${text}`;
  return { path, line, start, end, text, message, becomes: { value } };
}

/** The quotes around a text; undefined where it is written in another way, such as over several lines. */
function quoteOf(raw: string, text: string): string | undefined {
  return ["", '"', "'"].find((quote) => raw === `${quote}${text}${quote}`);
}

/** What a sample may come from: the schema has a pattern for it, not a list. */
const names: readonly string[] = [
  ...organs.map(({ id }) => id),
  ...systems.map(({ id }) => id),
  ...Object.keys(sampleRules.materials),
];

/** Names of organs and materials, where the patterns of a place ask for one of them. */
const sampleNames = (patterns: readonly string[]): readonly string[] =>
  patterns.some(isOfOrgans) ? names : [];

/** A pattern of `system.organ`, and not one of any id. */
function isOfOrgans(pattern: string): boolean {
  const form = new RegExp(pattern, "u");
  return form.test("oral_fluid") && form.test("respiratory.lungs") && !form.test("A-1");
}

/**
 * The known word that differs only in case, spaces, hyphens or underscores.
 * @returns undefined when the word is known as it stands, or when none or several words could be meant
 */
function sameWord(written: string, known: readonly string[]): string | undefined {
  if (known.includes(written)) return undefined;
  const same = known.filter((word) => plain(word) === plain(written));
  return same.length === 1 ? same[0] : undefined;
}

const plain = (word: string): string =>
  word
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, "-");

const amount = /^-?\d+(\.\d+)?( x \d+(\.\d+)?)* \S+$/;

/**
 * A quantity with its unit as the format writes it: `17.5kg`, `17,5 kg`, `14C`, `8 weeks`. The number stays the same.
 * Left alone as uncertain: a number without a unit, degrees without their scale, a comma before three digits (thousands
 * or thousandths?) and one in a size (decimal, or two dimensions?).
 */
function sameQuantity(written: string, patterns: readonly string[]): string | undefined {
  const text = written.trim();
  if (/\d\s*(°|º|degrees?)$/i.test(text)) return undefined;
  const comma = /\d,\d/.test(text);
  if (comma && !/^-?\d+,\d{1,2}(?!\d)[^,]*$/.test(text)) return undefined;
  const sized = patterns.some((pattern) => new RegExp(pattern, "u").test("1 x 1 mm"));
  if (comma && sized) return undefined;
  const intended = suggestion(text, patterns);
  if (intended === undefined || !amount.test(intended)) return undefined;
  return numbers(intended) === numbers(text.replace(",", ".")) && intended !== written ? intended : undefined;
}

/** The numbers of a text, in order; a digit that belongs to a unit (m3) is none. */
const numbers = (text: string): string => (text.match(/(?<![a-wyz^\d.])\d+(\.\d+)?/gi) ?? []).join(" ");

/**
 * What other programs would read as a number, without the quotes: leading zeros, 12e3, 0x1f, a plus sign, more digits
 * than a number holds; and after the older YAML 1.1, which most of them follow, 1_000, 0b101 and 12:30 (minutes).
 */
const asNumber =
  /^[-+]?0[\d_]+$|^\+\d+$|^0x[\da-f_]+$|^0o[0-7]+$|^0b[01_]+$|^\d+(\.\d+)?e[-+]?\d+$|^\d{16,}$|^[-+]?\d+_[\d_]*$|^[-+]?\d[\d_]*\.\d*_[\d_]*$|^[-+]?\d[\d_]*(:[0-5]?\d)+(\.\d*)?$|^[-+]?(\d+\.|\.\d+)$|^[-+]?\.inf$|^\.nan$/i;

/** Words that YAML 1.1 takes for true or false. */
const asTruth = /^(y|yes|n|no|on|off)$/i;

/** Whether other programs would read a text without quotes as something else, and lose what was written. */
const isReadOtherwise = (text: string): boolean => asNumber.test(text) || asTruth.test(text);
