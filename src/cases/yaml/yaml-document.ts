/**
 * Parses YAML with the `yaml` library and turns its nodes into plain ones (source-tree.ts). Only this file knows the
 * library, and syntax-messages.ts the wording of its errors.
 */
import { createRequire } from "node:module";
import type * as Yaml from "yaml";
import type { CST, Document, Scalar } from "yaml";
import { joinDecimalCommas } from "./decimal-comma.ts";
import type { Parsed } from "./document.ts";
import type { OpenMarks } from "./open-marks.ts";
import { maxDepth, sourceFaults, tooDeepMessage } from "./source-checks.ts";
import { PlacedDocument } from "./source-places.ts";
import { asWritten, markBefore, textMark } from "./source-text.ts";
import type { MapEntry, ScalarNode, SourceNode, Span } from "./source-tree.ts";
import { firstOfLine, type SyntaxMessage, summedUp } from "./syntax-message.ts";
import { syntaxMessages } from "./syntax-messages.ts";
import { TextLines } from "./text-lines.ts";

let library: typeof Yaml | undefined;

/** The library, loaded when the first text needs it: most runs meet ordinary texts only. */
function yaml(): typeof Yaml {
  library ??= createRequire(import.meta.url)("yaml") as typeof Yaml;
  return library;
}

/** The comments of a text, each from its # to the end of its line, in their order. */
export const commentsIn = (text: string): string[] =>
  [...new (yaml().Lexer)().lex(text)]
    .filter((token) => token.startsWith("#"))
    .map((token) => token.trimEnd());

/** Errors of the parser that directives and source-checks.ts say better. */
const checkedElsewhere = new Set([
  "BAD_DIRECTIVE",
  "TAG_RESOLVE_FAILED",
  "BAD_COLLECTION_TYPE",
  "NON_STRING_KEY",
]);
/** No case file has more words and marks; reading more would only take time. */
const maxWords = 400_000;

/**
 * Parses one text.
 * @param text decoded text without byte order mark
 * @returns the document, or every fault that keeps it from being read
 */
export function parseSlowly(text: string): Parsed {
  const lines = new TextLines(text);
  const failed = (faults: readonly SyntaxMessage[]): Parsed => ({
    ok: false,
    faults: summedUp(faults).map(({ message, ...span }) => ({ message, place: lines.place(span) })),
    line: (n) => lines.line(n),
  });
  const read = readTokens(text);
  if ("fault" in read) return failed([read.fault]);
  const directives = read.tokens
    .filter((token) => token.type === "directive")
    .map(({ offset, source }) => ({
      start: offset,
      end: offset + source.length,
      message: "a line that begins with % is read as a directive, which no case file has; take it out",
    }));
  const [document, second] = composed(read.tokens);
  if (document === undefined) return failed(directives.length > 0 ? directives : [emptyText(text)]);

  const translation = new Translation(text);
  const root = document.contents === null ? undefined : translation.node(document.contents);
  const errors = [...document.errors, ...document.warnings]
    .filter(({ code }) => !checkedElsewhere.has(code))
    .map(({ code, message, pos: [start, end] }) => ({ code, message, start, end }));
  const syntax = syntaxMessages(errors, translation.open, text, lines);
  const sound = sourceFaults(root);
  // Around a syntax error nodes are pieced together as well as can be; a key that is none follows from that.
  const other = syntax.length > 0 ? sound.filter(({ message }) => !message.startsWith("a key ")) : sound;
  const faults = [...directives, ...firstOfLine(syntax, other, lines)];
  if (second !== undefined) {
    const [start] = second.range;
    faults.push({ start, end: start + 3, message: "a second document begins here; write one case a file" });
  }
  if (faults.length > 0) return failed(faults);
  const empty = root === undefined || (root.kind === "scalar" && root.start === root.end);
  return empty ? failed([emptyText(text)]) : { ok: true, document: new PlacedDocument(root, lines) };
}

/** The parser's tokens, given up as soon as the text proves to be no case file: composing deep ones is recursive. */
function readTokens(text: string): { tokens: CST.Token[] } | { fault: SyntaxMessage } {
  const parser = new (yaml().Parser)();
  const tokens: CST.Token[] = [];
  let words = 0;
  const giveUp = (message: string) => ({
    fault: { start: parser.offset - 1, end: parser.offset, message },
  });
  for (const word of new (yaml().Lexer)().lex(text)) {
    tokens.push(...parser.next(word));
    if (parser.stack.length > maxDepth) return giveUp(tooDeepMessage);
    if (++words > maxWords)
      return giveUp(`the file has more than ${maxWords} words and marks, which no case file has`);
  }
  tokens.push(...parser.end());
  return { tokens };
}

function composed(tokens: readonly CST.Token[]): Document.Parsed[] {
  const { stackTraceLimit } = Error;
  // The parser makes an Error of every fault; their stack traces are never shown and take most of the time.
  Error.stackTraceLimit = 0;
  try {
    const composer = new (yaml().Composer)({
      keepSourceTokens: true,
      logLevel: "silent",
      prettyErrors: false,
      resolveKnownTags: false,
      stringKeys: true,
      uniqueKeys: false,
    });
    return [...composer.compose(tokens)];
  } finally {
    Error.stackTraceLimit = stackTraceLimit;
  }
}

const emptyText = (text: string): SyntaxMessage => ({
  start: 0,
  end: 1,
  message: /^\s*#/.test(text) ? "the file holds nothing but comments" : "the file is empty",
});

/** Turns the parser's nodes into plain ones, and notes the quotes and brackets that are not closed. */
class Translation {
  readonly open: OpenMarks = { brackets: [], quotes: [], longQuotes: [] };
  readonly #text: string;
  readonly #anchors = new Map<string, SourceNode>();

  constructor(text: string) {
    this.#text = text;
  }

  node(node: unknown): SourceNode {
    if (yaml().isAlias(node))
      return { kind: "alias", ...spanOf(node), name: node.source, target: this.#anchors.get(node.source) };
    if (yaml().isScalar(node)) return this.#anchored(node.anchor, this.#scalar(node));
    if (!yaml().isMap(node) && !yaml().isSeq(node))
      return { kind: "scalar", value: null, start: 0, end: 0, anchor: undefined, tag: undefined };
    const common = {
      ...spanOf(node),
      tag: node.tag === undefined ? undefined : markBefore("!", spanOf(node), this.#text),
    };
    if (node.srcToken?.type === "flow-collection") this.#noteBracket(node.srcToken, common);
    if (yaml().isSeq(node)) {
      const items: SourceNode[] = [];
      const list = this.#anchored(node.anchor, { kind: "list", ...common, items });
      for (const item of node.items) items.push(this.node(item));
      return list;
    }
    const entries: MapEntry[] = [];
    const map = this.#anchored(node.anchor, { kind: "map", ...common, entries });
    for (const { key, value } of node.items)
      entries.push({
        key: key === null ? undefined : this.node(key),
        value: value === null ? undefined : this.node(value),
      });
    if (node.flow === true) joinDecimalCommas(entries, this.#text);
    return map;
  }

  /** Anchors are known before what they hold is read, so that a circle can be told from a missing anchor. */
  #anchored(anchor: string | undefined, node: SourceNode): SourceNode {
    if (anchor !== undefined) this.#anchors.set(anchor, node);
    return node;
  }

  #scalar(node: Scalar): ScalarNode {
    const { srcToken, anchor, source } = node;
    const span = spanOf(node);
    if (srcToken?.type === "double-quoted-scalar" || srcToken?.type === "single-quoted-scalar") {
      const quote = srcToken.source.slice(0, 1);
      const closed = srcToken.source.length > 1 && srcToken.source.endsWith(quote);
      if (!closed) this.open.quotes.push({ ...span, sign: quote });
      else if (srcToken.source.includes("\n")) this.open.longQuotes.push({ ...span, sign: quote });
    }
    const value = asWritten(node.value, source);
    return {
      kind: "scalar",
      ...span,
      value,
      anchor: anchor === undefined ? undefined : textMark(value, span, this.#text),
      tag: node.tag === undefined ? undefined : markBefore("!", spanOf(node), this.#text),
    };
  }

  #noteBracket({ start, end }: CST.FlowCollection, span: Span): void {
    const closing = start.source === "[" ? "]" : "}";
    const written = end[0]?.source;
    if (written !== closing) this.open.brackets.push({ ...span, start: start.offset, sign: start.source });
  }
}

function spanOf(node: { range?: readonly number[] | null | undefined }): Span {
  const [start = 0, end = start] = node.range ?? [];
  return { start, end };
}
