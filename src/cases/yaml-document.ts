/**
 * Parses YAML with the `yaml` library and keeps its nodes, so that every path has a place in the text.
 * What a case file has no use for (tags, merge keys, a second document) is refused with a line.
 */
import {
  type Document,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  type Node,
  parseAllDocuments,
  visit,
  type YAMLMap,
} from "yaml";
import type { Parsed, Place, SourceDocument, SyntaxFault } from "./document.ts";
import type { Path } from "./path.ts";
import { syntaxMessage } from "./syntax-messages.ts";
import { TextLines } from "./text-lines.ts";

/** More references to anchors than this is not a case file but an attack on memory. */
const maxAliases = 100;
/** No case file nests deeper; the parser itself would run out of stack far above this. */
const maxDepth = 100;
/** Names that would reach into JavaScript's own objects. */
const forbiddenKeys = new Set(["__proto__", "constructor", "prototype"]);

/**
 * Parses one text.
 * @param text decoded text without byte order mark
 * @returns the document, or every fault that keeps it from being read
 */
export function parseYaml(text: string): Parsed {
  const lines = new TextLines(text);
  const failed = (faults: readonly SyntaxFault[]): Parsed => ({
    ok: false,
    faults,
    line: (n) => lines.line(n),
  });
  const place = (start: number, end = start + 1): Place => ({
    ...lines.at(start),
    length: Math.max(1, end - start),
  });

  const deep = tooDeep(text);
  if (deep !== undefined) return failed([{ message: tooDeepMessage, place: place(deep) }]);
  let documents: ReturnType<typeof parseAllDocuments>;
  try {
    documents = parseAllDocuments(text, {
      prettyErrors: false,
      logLevel: "silent",
      strict: true,
      uniqueKeys: true,
    });
  } catch (error) {
    if (error instanceof RangeError) return failed([{ message: tooDeepMessage, place: place(0) }]);
    throw error;
  }
  if (!Array.isArray(documents)) return failed([{ message: "the file is empty", place: place(0) }]);
  const [document, second] = documents;
  if (document === undefined) return failed([{ message: "the file is empty", place: place(0) }]);

  const faults: SyntaxFault[] = [...document.errors, ...document.warnings].map((error) => ({
    message: syntaxMessage(error.code, error.message),
    place: place(error.pos[0], error.pos[1]),
  }));
  if (second !== undefined) {
    const start = second.range?.[0] ?? 0;
    faults.push({ message: "a second document begins here; write one case a file", place: place(start) });
  }
  if (faults.length === 0) faults.push(...keyFaults(document, place));
  if (faults.length > 0) return failed(faults);
  try {
    return { ok: true, document: new YamlDocument(document, lines) };
  } catch (error) {
    if (error instanceof ReferenceError || error instanceof RangeError)
      return failed([
        { message: `too many or circular references to anchors (more than ${maxAliases})`, place: place(0) },
      ]);
    throw error;
  }
}

const tooDeepMessage = `nested more than ${maxDepth} levels deep; no case file is`;

/** Offset where brackets or list marks nest too deeply, found before the recursive parser meets them. */
function tooDeep(text: string): number | undefined {
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const char = text.charCodeAt(i);
    if (char === 0x5b || char === 0x7b) depth++;
    else if (char === 0x5d || char === 0x7d) depth = Math.max(0, depth - 1);
    if (depth > maxDepth) return i;
  }
  const marks = new RegExp(`^[ \\t]*(?:[-?:][ \\t]+){${maxDepth}}`, "m").exec(text);
  if (marks !== null) return marks.index;
  const indent = new RegExp(`^ {${maxDepth * 10}}`, "m").exec(text);
  return indent?.index;
}

/** Keys that are no plain words: merge keys, lists as keys, names of JavaScript's own. */
function keyFaults(document: Document, place: (start: number, end?: number) => Place): SyntaxFault[] {
  const faults: SyntaxFault[] = [];
  visit(document, {
    Pair(_, pair) {
      const key = pair.key as Node | null;
      const at = place(key?.range?.[0] ?? 0, key?.range?.[1]);
      if (!isScalar(key) || key.value === null)
        faults.push({ message: "a key must be a plain word", place: at });
      else if (key.value === "<<")
        faults.push({ message: "merge keys (<<) are not read; write the keys out", place: at });
      else if (typeof key.value === "string" && forbiddenKeys.has(key.value))
        faults.push({ message: `"${key.value}" cannot be a key; take it out`, place: at });
    },
  });
  return faults;
}

class YamlDocument implements SourceDocument {
  readonly value: unknown;
  readonly #document: Document;
  readonly #lines: TextLines;

  constructor(document: Document, lines: TextLines) {
    this.#document = document;
    this.#lines = lines;
    this.value = document.toJS({ maxAliasCount: maxAliases });
  }

  where(path: Path): Place {
    return this.#find(path, "value");
  }

  whereKey(path: Path): Place {
    return this.#find(path, "key");
  }

  line(number: number): string {
    return this.#lines.line(number);
  }

  #find(path: Path, want: "key" | "value"): Place {
    let node: unknown = this.#document.contents;
    let key: unknown = node;
    for (const step of path) {
      const container = isAlias(node) ? node.resolve(this.#document) : node;
      const pair = isMap(container) ? findPair(container, step) : undefined;
      const item = isSeq(container) && typeof step === "number" ? container.items[step] : undefined;
      if (pair === undefined && item === undefined) return this.#place(key ?? node);
      key = pair?.key ?? item;
      node = pair === undefined ? item : pair.value;
    }
    const empty = node === null || (isScalar(node) && node.value === null);
    return this.#place(want === "key" || empty ? key : node);
  }

  #place(node: unknown): Place {
    const range = (node as Node | null | undefined)?.range;
    const [start, end] = range ?? [0, 1];
    const at = this.#lines.at(start);
    const restOfLine = this.#lines.line(at.line).length - at.column + 1;
    return { ...at, length: Math.max(1, Math.min(end - start, restOfLine)) };
  }
}

function findPair(map: YAMLMap, step: string | number) {
  return map.items.find(
    (pair) => isPair(pair) && isScalar(pair.key) && String(pair.key.value) === String(step),
  );
}
