/** Slips of typing that the schema cannot see: curly quotes, and a text in braces that was cut at its comma. */
import { grouped } from "../../words/grouped.ts";
import { type Path, valueAt } from "../model/path.ts";
import type { SourceDocument } from "../yaml/document.ts";
import { named, type SchemaFault } from "./schema-faults.ts";

const whole = /^(?:[“”„‟«»]([^“”„‟«»]+)[“”„‟«»]|[‘’‚‛]([^‘’‚‛]+)[‘’‚‛])$/u;
/** Begins with a curly quote, and no other closes it. */
const torn = /^(?:[“”„‟«»][^“”„‟«»]*|[‘’‚‛][^‘’‚‛]*)$/u;
const any = /[“”„‟«»‘’‚‛]/u;
/** More of a text is not said again. */
const longText = 200;
const quoted = (text: string): string =>
  JSON.stringify(text.length > longText ? `${text.slice(0, longText)}…` : text);

/** The text within curly quotes that hold all of it; undefined where there are none. */
export function withoutCurly(text: string): string | undefined {
  const [, one, other] = whole.exec(text) ?? [];
  return one ?? other;
}

/** Adds these slips to the faults of the schema; of several that one slip makes, the first stays and says so. */
export function withTypingFaults(document: SourceDocument, faults: readonly SchemaFault[]): SchemaFault[] {
  const cut = grouped(
    faults.filter((fault) => isCut(document, fault)),
    ({ path }) => JSON.stringify(path.slice(0, -1)),
  );
  const runs = new Map([...cut.values()].flatMap((rests) => runsOf(document.value, rests)));
  const kept = faults.flatMap((fault) => runs.get(fault) ?? (runs.has(fault) ? [] : [fault]));
  if (!any.test(document.text)) return kept;
  const told = new Set([...runs.values()].map((run) => JSON.stringify(run?.intended)));
  const curly = curlyFaults(document, document.value, []).filter(
    ({ path }) => !told.has(JSON.stringify(path)),
  );
  const places = new Set(curly.map(({ path }) => JSON.stringify(path)));
  return [...kept.filter(({ path }) => !places.has(JSON.stringify(path))), ...curly];
}

/** Whether a key stands without a colon: it is the rest of the text before it. */
function isCut(document: SourceDocument, { kind, path }: SchemaFault): boolean {
  if (kind !== "unknown-key" || valueAt(document.value, path) !== null) return false;
  // Here a space is missing after the colon.
  if (/^[\w-]+:\S/.test(String(path.at(-1)))) return false;
  const { line, column, length } = document.whereKey(path);
  return /^\s*[,}]/.test(document.line(line).slice(column - 1 + length));
}

/** Of one group of keys: what is said at the first rest of each text that was cut, and nothing at the others. */
function runsOf(value: unknown, rests: readonly SchemaFault[]): [SchemaFault, SchemaFault | undefined][] {
  const parent = rests[0]?.path.slice(0, -1) ?? [];
  const byKey = new Map(rests.map((fault) => [String(fault.path.at(-1)), fault]));
  const entries = Object.entries((valueAt(value, parent) ?? {}) as object);
  // Keys that are whole numbers lose their order.
  const isOrdered = !entries.some(([key]) => /^\d+$/.test(key));
  const runs: [SchemaFault, SchemaFault | undefined][] = [];
  let owner: { key: string; parts: unknown[]; first?: SchemaFault } | undefined;
  const close = (): void => {
    if (owner?.first === undefined) return;
    const { key, parts, first } = owner;
    const text = parts.join(", ");
    const path = [...parent, key];
    const message = `${named(path)}: the text was cut at its comma. Put it in quotes: ${key}: ${quoted(withoutCurly(text) ?? text)}.`;
    runs.push([first, { ...first, intended: path, message }]);
  };
  for (const [key, content] of entries) {
    const rest = byKey.get(key);
    if (rest === undefined) {
      close();
      owner = typeof content === "string" && isOrdered ? { key, parts: [content] } : undefined;
    } else if (owner === undefined) {
      const message = `${named(rest.path)}: a text was cut at its comma. Put all of it in quotes.`;
      runs.push([rest, isOrdered ? rest : { ...rest, message }]);
    } else {
      owner.parts.push(key);
      if (owner.first === undefined) owner.first = rest;
      else runs.push([rest, undefined]);
    }
  }
  close();
  return runs;
}

/** Texts without quotes that begin with a curly one and are held by it, or were meant to be. */
function curlyFaults(document: SourceDocument, value: unknown, path: Path): SchemaFault[] {
  if (typeof value === "object" && value !== null)
    return Object.entries(value).flatMap(([key, inner]) =>
      curlyFaults(document, inner, [...path, Array.isArray(value) ? Number(key) : key]),
    );
  if (typeof value !== "string" || document.where(path).length !== value.length) return [];
  const inner = withoutCurly(value);
  if (inner === undefined && !torn.test(value)) return [];
  const message = `${named(path)}: curly quotes are read as part of the text. Write straight ones: ${quoted(inner ?? value.slice(1))}.`;
  return [{ path, intended: path, message, points: "value", kind: "wrong-value" }];
}
