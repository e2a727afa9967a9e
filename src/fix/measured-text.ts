/** Writes what was measured into the text of a case. Comments, key order and layout stay; the result is proven by reading it anew. */
import { isDeepStrictEqual } from "node:util";
import { type Path, valueAt } from "../cases/index.ts";
import type { Place, SourceDocument } from "../cases/yaml/document.ts";
import { parseYaml } from "../cases/yaml/parse-yaml.ts";
import type { MeasuredRecord } from "../measure/index.ts";
import { blockEntry, flowEntry, leavesOf, scalar } from "./measured-entry.ts";
import { applyEdits, type TextEdit } from "./text-edit.ts";

export type MeasuredText =
  | { readonly ok: true; readonly text: string }
  /** `why` says what keeps the entry from being written; `entry` is what to write by hand, in one line. */
  | { readonly ok: false; readonly why: string; readonly entry: string };

const key = "measured";

/**
 * Sets `measured` of an organ that names a tracing.
 * @param text the case
 * @param path where the organ stands
 */
export function withMeasured(text: string, path: Path, measured: MeasuredRecord): MeasuredText {
  const end = text.includes("\r\n") ? "\r\n" : "\n";
  const failed = (why: string): MeasuredText => ({
    ok: false,
    why,
    entry: flowEntry(measured, "", " ").replaceAll(/\s+/g, " "),
  });
  const parsed = parseYaml(text);
  if (!parsed.ok) return failed("the case cannot be read");
  const { document } = parsed;
  const old = valueAt(document.value, [...path, key]);
  if (isDeepStrictEqual(old, measured)) return { ok: true, text };
  const site = siteIn(text, document, path);
  const edits =
    old === undefined
      ? undefined
      : old === null
        ? [filling(site, measured, end)]
        : replacement(site, old, measured, end);
  if (edits === "comment")
    return failed(`${[...path, key].join(".")} holds a comment that would be lost; take the entry out`);
  const after = applyEdits(text, edits ?? [insertion(site, measured, end)]);
  const read = parseYaml(after);
  const expected = structuredClone(document.value);
  const organ = valueAt(expected, path);
  if (typeof organ === "object" && organ !== null) Object.assign(organ, { [key]: measured });
  if (read.ok && isDeepStrictEqual(read.document.value, expected)) return { ok: true, text: after };
  return failed(`${path.join(".")} is written in a way in which nothing can be added safely`);
}

/** The text around an organ, with places as offsets. */
interface Site {
  readonly text: string;
  readonly isFlow: boolean;
  readonly path: Path;
  span(path: Path): readonly [number, number];
  keySpan(path: Path): readonly [number, number];
  /** Columns before an offset in its line. */
  column(offset: number): number;
}

function siteIn(text: string, document: SourceDocument, path: Path): Site {
  const starts = [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)];
  const offsets = ({ line, column, length }: Place): readonly [number, number] => {
    const start = (starts[line - 1] ?? 0) + column - 1;
    return [start, start + length];
  };
  return {
    text,
    path,
    isFlow: text[offsets(document.where(path))[0]] === "{",
    span: (at) => offsets(document.where(at)),
    keySpan: (at) => offsets(document.whereKey(at)),
    column: (offset) => offset - (text.lastIndexOf("\n", offset - 1) + 1),
  };
}

/** A new entry behind the tracing. */
function insertion(site: Site, measured: MeasuredRecord, end: string): TextEdit {
  const { text, path } = site;
  const [, after] = site.span([...path, "tracing"]);
  const column = site.column(site.keySpan([...path, "tracing"])[0]);
  if (site.isFlow) {
    const [open] = site.span(path);
    const indent = " ".repeat(site.column(open) + 1);
    return { start: after, end: after, text: `,${end}${indent}${flowEntry(measured, indent, end)}` };
  }
  const feed = text.indexOf("\n", after);
  const entry = blockEntry(measured, " ".repeat(column), end);
  if (feed < 0) return { start: text.length, end: text.length, text: `${end}${entry.trimEnd()}` };
  return { start: feed + 1, end: feed + 1, text: entry };
}

/** The entry in place of a key that was left blank. */
function filling(site: Site, measured: MeasuredRecord, end: string): TextEdit {
  const [begin, behind] = site.keySpan([...site.path, key]);
  const blank = /^["']?[ \t]*:?[ \t]*(?:null|~)?/.exec(site.text.slice(behind))?.[0] ?? "";
  const indent = " ".repeat(site.column(begin));
  const entry = site.isFlow ? flowEntry(measured, indent, end) : blockEntry(measured, indent, end).trim();
  return { start: begin, end: behind + blank.length, text: entry };
}

/** Edits that turn an old entry into the new one; the word `comment` when they would take a comment out. */
function replacement(
  site: Site,
  old: unknown,
  measured: MeasuredRecord,
  end: string,
): TextEdit[] | "comment" | undefined {
  const { text } = site;
  const path = [...site.path, key];
  const leaves = leavesOf(measured);
  const before = leavesOf(old);
  const names = (list: typeof leaves): string => list.map((leaf) => leaf.path.join(".")).join();
  // The same figures as before: only the figures change.
  if (names(leaves) === names(before))
    return leaves.flatMap(({ path: inside, value }, index): TextEdit[] => {
      if (value === before[index]?.value) return [];
      const [start, stop] = site.span([...path, ...inside]);
      return [{ start, end: stop, text: scalar(value) }];
    });
  const [begin] = site.keySpan(path);
  const [open] = site.span(path);
  if (text[open] === "{") {
    const close = closingBrace(text, open);
    if (/(^|\s)#/.test(text.slice(open, close))) return "comment";
    const indent = " ".repeat(site.column(begin));
    return [{ start: begin, end: close, text: flowEntry(measured, indent, end) }];
  }
  const last = before.reduce(
    (most, { path: inside }) => Math.max(most, site.span([...path, ...inside])[1]),
    begin,
  );
  const feed = text.indexOf("\n", last);
  const stop = feed < 0 ? text.length : feed + 1;
  if (/(^|\s)#/.test(text.slice(begin, stop))) return "comment";
  const column = site.column(begin);
  return [{ start: begin, end: stop, text: blockEntry(measured, " ".repeat(column), end).trimStart() }];
}

/** Behind the brace that closes the one at `open`; quotes are stepped over. */
function closingBrace(text: string, open: number): number {
  let depth = 0;
  let quote = "";
  for (let at = open; at < text.length; at++) {
    const sign = text[at] ?? "";
    if (quote !== "") quote = sign === quote && text[at - 1] !== "\\" ? "" : quote;
    else if (sign === '"' || sign === "'") quote = sign;
    else if (sign === "{") depth++;
    else if (sign === "}" && --depth === 0) return at + 1;
  }
  return text.length;
}
