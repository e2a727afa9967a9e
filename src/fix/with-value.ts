/** Writes one value into the text of a case as an editor would: comments, order and layout stay. */
import { isDeepStrictEqual } from "node:util";
import { isKeyed, type Keyed, type Path, valueAt } from "../cases/model/path.ts";
import type { SourceDocument } from "../cases/yaml/document.ts";
import { type Form, type FormValue, formText } from "../cases/yaml/form.ts";
import { parseYaml } from "../cases/yaml/parse-yaml.ts";
import { keyOrder } from "./probe.ts";

/**
 * Sets a value; keys that are not there yet are put where the format has them.
 * @returns undefined where it cannot be written without losing something; what is given is proven by reading it anew
 */
export function withValue(text: string, path: Path, value: unknown): string | undefined {
  const end = text.includes("\r\n") ? "\r\n" : "\n";
  const parsed = parseYaml(text);
  if (!parsed.ok) return undefined;
  const { document } = parsed;
  const lines = text.replace(/\r?\n$/, "").split(/\r?\n/);
  const written = entryWith(lines, document, path, value);
  if (written === undefined) return undefined;
  const after = `${written.join(end)}${end}`;
  const read = parseYaml(after);
  const expected = setIn(document.value, path, value);
  return read.ok && isDeepStrictEqual(read.document.value, expected) ? after : undefined;
}

/** The lines with the entry that holds the path written anew: the deepest one that stands on a line of its own. */
function entryWith(
  lines: readonly string[],
  document: SourceDocument,
  path: Path,
  value: unknown,
): string[] | undefined {
  let depth = 0;
  while (depth < path.length - 1 && isBlock(lines, document, path.slice(0, depth + 1))) depth++;
  const above = path.slice(0, depth);
  const key = path[depth];
  const holder = depth === 0 ? document.value : valueAt(document.value, above);
  if (typeof key !== "string" || !isKeyed(holder)) return undefined;
  const at = (name: string) => document.whereKey([...above, name]);
  const old = holder[key];
  const entry = setIn(old, path.slice(depth + 1), value, path.slice(0, depth + 1));
  const names = Object.keys(holder).sort((a, b) => at(a).line - at(b).line);
  const [first = ""] = names;
  const indent = " ".repeat(at(first).column - 1);
  if (names.some((name) => !lines[at(name).line - 1]?.startsWith(indent))) return undefined;
  const isFlow = key in holder && /^\s*:\s*\{/.test(behind(lines, document, [...above, key]));
  const form =
    isFlow && isKeyed(entry)
      ? { flow: keysOf(entry) }
      : formOf(entry, depth === 0 && path.length > 1 && isBlockAlways(key));
  const text = formText([[key, form]], indent);
  const fresh = text.trimEnd().split("\n");
  if (key in holder) {
    const start = at(key).line - 1;
    const stop = entryEnd(lines, start, indent.length);
    const [comment, isLost] = commentsOf(lines.slice(start, stop));
    if (isLost) return undefined;
    if (comment !== "") fresh[0] = `${fresh[0]}  ${comment}`;
    return [...lines.slice(0, start), ...fresh, ...lines.slice(stop)];
  }
  const order = keyOrder("case", above);
  const rank = (name: string): number => order.indexOf(name);
  const next = names.find((name) => rank(name) > rank(key));
  const last = names.at(-1) ?? first;
  let place = next === undefined ? entryEnd(lines, at(last).line - 1, indent.length) : at(next).line - 1;
  // A comment above a key belongs to it.
  if (next !== undefined) while (place > 0 && /^\s*#/.test(lines[place - 1] ?? "")) place--;
  return [...lines.slice(0, place), ...fresh, ...lines.slice(place)];
}

/** Systems stand on lines of their own, however little they say. */
const isBlockAlways = (key: string): boolean => !["pig", "selection", "death", "opened"].includes(key);

/** Whether a value holds keys on lines of their own. */
function isBlock(lines: readonly string[], document: SourceDocument, path: Path): boolean {
  const value = valueAt(document.value, path);
  if (!isKeyed(value) || Object.keys(value).length === 0) return false;
  const below = lines[document.whereKey(path).line] ?? "";
  return /^\s*:\s*(?:#.*)?$/.test(behind(lines, document, path)) && !/^\s*[{[]/.test(below);
}

/** What stands on the line of a key behind it. */
function behind(lines: readonly string[], document: SourceDocument, path: Path): string {
  const { line, column, length } = document.whereKey(path);
  return (lines[line - 1] ?? "").slice(column - 1 + length);
}

/** The line behind an entry: what is indented more deeply, or is an item of its list, belongs to it. */
export function entryEnd(lines: readonly string[], start: number, indent: number): number {
  let end = start + 1;
  for (let at = start + 1; at < lines.length; at++) {
    const line = lines[at] ?? "";
    if (/^\s*(?:#|$)/.test(line)) continue;
    const depth = line.search(/\S/);
    if (depth < indent || (depth === indent && !/^\s*- /.test(line))) break;
    end = at + 1;
  }
  return end;
}

/** The comment behind the first line, and whether there are others, which would be lost. */
function commentsOf([first = "", ...others]: readonly string[]): readonly [comment: string, isLost: boolean] {
  const comment = /\s(#[^"']*)$/.exec(first)?.[1] ?? "";
  return [comment, others.some((line) => /(?:^|\s)#/.test(line))];
}

/** A copy with a value at a path: the word for a normal organ and the bare list of its findings make room for keys. */
function setIn(into: unknown, path: Path, value: unknown, at: Path = []): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === "number") {
    const list: readonly unknown[] = Array.isArray(into) ? into : [];
    const items = [...list];
    items[step] = setIn(list[step], rest, value, [...at, step]);
    return items;
  }
  const keyed: Keyed = isKeyed(into)
    ? into
    : into === "normal"
      ? { state: "normal" }
      : Array.isArray(into)
        ? { findings: into }
        : {};
  const inside = setIn(keyed[step], rest, value, [...at, step]);
  return step in keyed ? { ...keyed, [step]: inside } : inOrder({ ...keyed, [step]: inside }, step, at);
}

/** The same keys, the new one before those that the format has behind it. */
function inOrder(keyed: Keyed, key: string, at: Path): Keyed {
  const others = Object.keys(keyed).filter((name) => name !== key);
  if (others.length === 0 || at.length === 0) return keyed;
  const order = keyOrder("case", at);
  const place = others.findIndex((name) => order.indexOf(name) > order.indexOf(key));
  const names = place < 0 ? [...others, key] : [...others.slice(0, place), key, ...others.slice(place)];
  return Object.fromEntries(names.map((name) => [name, keyed[name]]));
}

function formOf(value: unknown, isBlockKey = false): FormValue {
  if (value === null || value === undefined) return undefined;
  if (typeof value === "string") return value === "yes" || value === "no" ? { word: value } : value;
  if (Array.isArray(value))
    return value.every((item) => typeof item === "string")
      ? value
      : { items: value.map((item) => (isKeyed(item) ? keysOf(item) : [])) };
  if (!isKeyed(value)) return { word: String(value) };
  const isFlat = Object.values(value).every((item) => !isKeyed(item) && !isListOfKeyed(item));
  return isFlat && !isBlockKey ? { flow: keysOf(value) } : { block: keysOf(value) };
}

const keysOf = (keyed: Keyed): Form => Object.entries(keyed).map(([key, item]) => [key, formOf(item)]);
const isListOfKeyed = (value: unknown): boolean => Array.isArray(value) && value.some(isKeyed);
