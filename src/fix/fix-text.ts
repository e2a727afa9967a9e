/** Puts right what is certain in one text. Comments and layout stay, and every step is proven by reading the text anew. */
import { isDeepStrictEqual } from "node:util";
import { valueAt } from "../cases/index.ts";
import type { SourceDocument } from "../cases/yaml/document.ts";
import { parseYaml } from "../cases/yaml/parse-yaml.ts";
import { withSchema } from "../schemas/index.ts";
import { hiddenCharacter } from "../words/hidden-characters.ts";
import { inKeyOrder } from "./key-order.ts";
import { type FixedKind, keyOrder } from "./probe.ts";
import { applyEdits } from "./text-edit.ts";
import { type ValueEdit, valueEdits } from "./value-edits.ts";

/** Something that was put right. */
export interface Fix {
  /** Counted from 1, in the text before any fix; 0 where the whole file is meant. */
  readonly line: number;
  readonly message: string;
}

export interface FixedText {
  readonly text: string;
  readonly fixes: readonly Fix[];
}

export interface FixTextOptions {
  readonly kind: FixedKind;
  /** The path for the editor's line, where it is missing or leads nowhere and there is a schema. */
  readonly schema?: string | undefined;
}

/** A word behind a key that was put right becomes known in the next round; deeper than this nothing nests. */
const maxRounds = 20;

/**
 * Fixes one text. Fixing the result again changes nothing.
 * @param text without byte order mark
 * @returns the same text where it cannot be read
 */
export function fixText(text: string, { kind, schema }: FixTextOptions): FixedText {
  const order = keyOrder(kind);
  // Readers of files look for these before they parse.
  const start = hiddenCharacter.test(text) ? undefined : read(text);
  if (start === undefined || !Object.keys(start.value).some((key) => order.includes(key)))
    return { text, fixes: [] };
  const fixes: Fix[] = [];
  let current = text;
  for (let round = 0; round < maxRounds; round++) {
    const { text: next, applied } = applyCertain(current, kind);
    if (applied.length === 0) break;
    fixes.push(...applied.map(({ line, message }) => ({ line, message })));
    current = next;
  }
  fixes.sort((a, b) => a.line - b.line);
  const whole = (next: string | undefined, message: string): void => {
    if (next === undefined || !isSameValue(current, next)) return;
    current = next;
    fixes.push({ line: 0, message });
  };
  if (!current.endsWith("\n"))
    whole(`${current}${current.includes("\r\n") ? "\r\n" : "\n"}`, "line end added to the last line");
  const document = read(current)?.document;
  if (document !== undefined)
    whole(inKeyOrder(current, document, order), "keys put into the order of the format");
  if (schema !== undefined) whole(withSchema(current, schema), `line for the editor: ${schema}`);
  return { text: current, fixes };
}

interface Read {
  readonly document: SourceDocument;
  readonly value: Record<string, unknown>;
}

function read(text: string): Read | undefined {
  const parsed = parseYaml(text);
  if (!parsed.ok) return undefined;
  const { value } = parsed.document;
  if (typeof value !== "object" || value === null || Array.isArray(value)) return undefined;
  return { document: parsed.document, value: value as Record<string, unknown> };
}

const isSameValue = (before: string, after: string): boolean =>
  isDeepStrictEqual(read(before)?.value, read(after)?.value);

/** One round: all edits at once, or, where one of them has another effect than it should, all but that one. */
function applyCertain(text: string, kind: FixedKind): { text: string; applied: readonly ValueEdit[] } {
  const before = read(text);
  if (before === undefined) return { text, applied: [] };
  const edits = valueEdits(text, before.document, kind, before.value);
  const isProven = (some: readonly ValueEdit[]): boolean =>
    isDeepStrictEqual(read(applyEdits(text, some))?.value, expected(before.value, some));
  const applied: ValueEdit[] = isProven(edits) ? edits : [];
  if (applied.length === 0) for (const edit of edits) if (isProven([...applied, edit])) applied.push(edit);
  return { text: applyEdits(text, applied), applied };
}

/** The value that the edits should lead to. */
function expected(value: Record<string, unknown>, edits: readonly ValueEdit[]): unknown {
  const result = structuredClone(value);
  // Values first: the path to a value goes by the keys as they were.
  const ordered = [...edits].sort((a, b) => b.path.length - a.path.length);
  for (const { path, becomes } of [
    ...ordered.filter(({ becomes }) => "value" in becomes),
    ...ordered.filter(({ becomes }) => "key" in becomes),
  ]) {
    const last = path.at(-1);
    const parent = valueAt(result, path.slice(0, -1)) as Record<string | number, unknown> | undefined;
    if (last === undefined || parent === undefined) continue;
    if ("value" in becomes) parent[last] = becomes.value;
    else {
      parent[becomes.key] = parent[last];
      delete parent[last];
    }
  }
  return result;
}
