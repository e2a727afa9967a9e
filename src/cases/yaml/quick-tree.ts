/**
 * The quick way through an ordinary file: js-yaml reads events with their places ten times faster than the parser that
 * explains errors. Whatever is not plain (references, tags, anything wrong) is left to that parser.
 */
import { EVENT_ID, type Event, getScalarValue, parseEvents } from "js-yaml";
import { hiddenCharacter } from "../../words/hidden-characters.ts";
import { forbiddenKeys, keyProblem, maxDepth, maxEntries } from "./source-checks.ts";
import type { MapEntry, ScalarNode, SourceNode } from "./source-tree.ts";

// Looked up once: a bundle asks the library anew at every mention of one of its names.
const { DOCUMENT, MAPPING, POP, SCALAR, SEQUENCE } = EVENT_ID;
const scalarValue = getScalarValue;

/** No ordinary file is longer. */
const longest = 100_000;
/** Nor does a line of one have more characters, or stand so far to the right. */
const longestLine = 1000;
const deepestIndent = 80;
/** So many open brackets, or list marks at the beginning of a line, are nesting that no recursive parser should meet. */
const mostOpen = 20;
const mostMarks = 8;

/** Styles of scalars that have quotes around them. */
const quoted = new Set([2, 3]);
const plain = 1;
const flow = 2;
const isBlock = ({ style }: ScalarEvent): boolean => style > 3;

class NotOrdinary extends Error {}

/**
 * The plain value of an ordinary text without any fault, or undefined where the other parser has to look. Where its
 * values stand is left to {@link quickTree}: most files are never asked.
 */
export const quickValue = (text: string): { readonly value: unknown } | undefined =>
  isOrdinary(text) ? attempt(() => ({ value: new ValueReader(text).read() })) : undefined;

/** The tree of an ordinary text, with every place, or undefined where the other parser has to look. */
export const quickTree = (text: string): SourceNode | undefined =>
  isOrdinary(text) ? attempt(() => new Builder(text).tree()) : undefined;

function attempt<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch {
    // Whatever is wrong, the other parser finds it again and says it properly.
    return undefined;
  }
}

const tab = 0x09;
const feed = 0x0a;
const carriageReturn = 0x0d;
const space = 0x20;
const exclamation = 0x21;
const hash = 0x23;
const percent = 0x25;
const ampersand = 0x26;
const star = 0x2a;
const comma = 0x2c;
const dash = 0x2d;
const dot = 0x2e;
const colon = 0x3a;
const question = 0x3f;
const openBracket = 0x5b;
const closeBracket = 0x5d;
const openBrace = 0x7b;
const closeBrace = 0x7d;

/**
 * Whether a text has nothing that only the other parser reads well: tabs, references, tags, directives, document marks,
 * list entries that are only a comment, very long lines, deep nesting. One pass over the characters.
 */
function isOrdinary(text: string): boolean {
  if (text.length > longest) return false;
  let open = 0;
  let lineStart = 0;
  /** What stood before this character. */
  let before = feed;
  for (let at = 0; at < text.length; at++) {
    const char = text.charCodeAt(at);
    if (before === feed) {
      lineStart = at;
      if (char === percent || isDocumentMark(text, at, char) || isUnusualIndent(text, at)) return false;
    }
    if (char === tab || at - lineStart >= longestLine) return false;
    if (char === openBrace || char === openBracket) {
      if (++open >= mostOpen) return false;
    } else if (char === closeBrace || char === closeBracket) {
      if (open > 0) open--;
    } else if (char === exclamation || char === ampersand || char === star) {
      const next = text.charCodeAt(at + 1);
      const isMark =
        char === exclamation ||
        !(Number.isNaN(next) || next === space || next === feed || next === carriageReturn);
      if (isMark && beginsValue(before)) return false;
    }
    before = char;
  }
  return true;
}

/** Whether a value may begin behind this character. */
const beginsValue = (before: number): boolean =>
  before === space ||
  before === feed ||
  before === openBracket ||
  before === openBrace ||
  before === comma ||
  before === colon ||
  before === dash;

const isDocumentMark = (text: string, at: number, char: number): boolean =>
  (char === dash || char === dot) && (text.startsWith("---", at) || text.startsWith("...", at));

/** A line far to the right, with many list marks, or with a list entry that is only a comment. */
function isUnusualIndent(text: string, start: number): boolean {
  let at = start;
  let marks = 0;
  for (;;) {
    while (text.charCodeAt(at) === space) at++;
    if (at - start >= deepestIndent) return true;
    const char = text.charCodeAt(at);
    if ((char !== dash && char !== question && char !== colon) || text.charCodeAt(at + 1) !== space) break;
    marks++;
    at++;
  }
  return marks > mostMarks || (marks > 0 && text.charCodeAt(at) === hash);
}

/** Parsers do not agree on how far a block text is set in that begins with an empty line, or has lines of blanks only. */
const isOddBlock = (block: string): boolean => /^\s*\n/.test(block) || /^ +\r?$/m.test(block);

/** The events of a text, taken one by one. */
class Events {
  readonly #text: string;
  readonly #all: readonly Event[];
  #at = 0;

  constructor(text: string) {
    this.#text = text;
    this.#all = parseEvents(text, {});
  }

  /** What is read of the one document of the text. */
  ofDocument<T>(read: () => T): T {
    if (this.#all[this.#at++]?.type !== DOCUMENT) throw new NotOrdinary();
    const root = read();
    if (!this.ends() || this.#at !== this.#all.length) throw new NotOrdinary();
    return root;
  }

  /** The next event, which must be a value without anchor or tag. */
  node(): NodeEvent {
    const event = this.#all[this.#at++];
    if (
      event === undefined ||
      (event.type !== SCALAR && event.type !== MAPPING && event.type !== SEQUENCE) ||
      event.anchorStart >= 0 ||
      event.tagStart >= 0 ||
      this.#isOdd(event)
    )
      throw new NotOrdinary();
    return event;
  }

  /** A key with a value in brackets makes a map without braces of its own. */
  #isOdd(event: NodeEvent): boolean {
    if (event.type === SCALAR)
      return isBlock(event) && isOddBlock(this.#text.slice(event.valueStart, event.valueEnd));
    return event.type === MAPPING && event.style === flow && this.#text.charAt(event.start) !== "{";
  }

  /** Whether what is being read ends here. */
  ends(): boolean {
    if (this.#all[this.#at]?.type !== POP) return false;
    this.#at++;
    return true;
  }
}

/** Makes the plain value from the events in one pass, and gives up at whatever source-checks.ts would report. */
class ValueReader {
  readonly #text: string;
  readonly #events: Events;

  constructor(text: string) {
    this.#text = text;
    this.#events = new Events(text);
  }

  read(): unknown {
    return this.#events.ofDocument(() => this.#value(0));
  }

  #value(depth: number): unknown {
    const event = this.#events.node();
    if (event.type === SCALAR) return this.#scalar(event);
    if (depth >= maxDepth) throw new NotOrdinary();
    return event.type === MAPPING ? this.#map(event.style === flow, depth + 1) : this.#list(depth + 1);
  }

  #map(isFlow: boolean, depth: number): Record<string, unknown> {
    const map: Record<string, unknown> = {};
    for (let entries = 0; !this.#events.ends(); entries++) {
      const key = this.#key();
      if (entries >= maxEntries || Object.hasOwn(map, key) || !isPlainKey(key)) throw new NotOrdinary();
      const value = this.#value(depth);
      // `{weight: 17,5 kg}` leaves a key without a value; the other parser puts it together again.
      if (isFlow && value === null && /^\d/.test(key)) throw new NotOrdinary();
      map[key] = value;
    }
    return map;
  }

  #key(): string {
    const event = this.#events.node();
    const word = event.type === SCALAR && !isBlock(event) ? this.#scalar(event) : null;
    if (word === null) throw new NotOrdinary();
    if (typeof word === "string") return word;
    // A key stays as it is written: 1.0 is not 1.
    if (event.type !== SCALAR || String(word) !== scalarValue(this.#text, event)) throw new NotOrdinary();
    return String(word);
  }

  #list(depth: number): unknown[] {
    const list: unknown[] = [];
    while (!this.#events.ends()) {
      const item = this.#value(depth);
      // Where an item without a value stands, the events do not say.
      if (item === null || list.length >= maxEntries) throw new NotOrdinary();
      list.push(item);
    }
    return list;
  }

  #scalar(event: ScalarEvent): ScalarNode["value"] {
    if (event.valueStart < 0) return null;
    const written = scalarValue(this.#text, event);
    if (event.style === plain) return plainScalar(written);
    // Only what is written with a backslash can be a character that the text itself does not hold.
    if (!event.fast && hiddenCharacter.test(written)) throw new NotOrdinary();
    return written;
  }
}

/** Keys that need no word of explanation from source-checks.ts. */
const isPlainKey = (key: string): boolean =>
  (/^[a-z][a-z_]*$/.test(key) && !forbiddenKeys.has(key)) || keyProblem(key, nothingSeen) === undefined;

const nothingSeen: ReadonlySet<string> = new Set();

type ScalarEvent = Extract<Event, { type: typeof EVENT_ID.SCALAR }>;
type NodeEvent = Extract<Event, { tagStart: number }>;

class Builder {
  readonly #text: string;
  readonly #events: Events;

  constructor(text: string) {
    this.#text = text;
    this.#events = new Events(text);
  }

  tree(): SourceNode {
    return this.#events.ofDocument(() => this.#node(0));
  }

  /** @param after where the text before this node ends; an empty value stands there */
  #node(after: number): SourceNode {
    const event = this.#events.node();
    if (event.type === SCALAR) return this.#scalar(event, after);
    const isFlow = event.style === flow;
    return event.type === MAPPING ? this.#map(event.start, isFlow) : this.#list(event.start, isFlow);
  }

  #map(start: number, isFlow: boolean): SourceNode {
    const entries: MapEntry[] = [];
    let end = start + 1;
    while (!this.#events.ends()) {
      const key = this.#node(end);
      if (key.kind !== "scalar" || key.start === key.end || /[|>]/.test(this.#text.charAt(key.start)))
        throw new NotOrdinary();
      const value = this.#node(key.end);
      // `{weight: 17,5 kg}` leaves a key without a value; the other parser puts it together again.
      if (isFlow && value.start === value.end && /^\d/.test(`${key.value}`)) throw new NotOrdinary();
      if (typeof key.value !== "string" && String(key.value) !== this.#text.slice(key.start, key.end))
        throw new NotOrdinary();
      entries.push({ key, value });
      end = value.end;
    }
    return { kind: "map", start, end: isFlow ? this.#closing("}", end) : end, entries, tag: undefined };
  }

  #list(start: number, isFlow: boolean): SourceNode {
    const items: SourceNode[] = [];
    let end = start + 1;
    while (!this.#events.ends()) {
      const item = this.#node(end);
      if (item.kind === "scalar" && item.value === null) throw new NotOrdinary();
      items.push(item);
      end = item.end;
    }
    return { kind: "list", start, end: isFlow ? this.#closing("]", end) : end, items, tag: undefined };
  }

  #closing(sign: string, from: number): number {
    const at = this.#text.indexOf(sign, from);
    if (at < 0) throw new NotOrdinary();
    return at + 1;
  }

  #scalar(event: ScalarEvent, after: number): ScalarNode {
    const common = { kind: "scalar", anchor: undefined, tag: undefined } as const;
    if (event.valueStart < 0) return { ...common, start: after, end: after, value: null };
    const written = scalarValue(this.#text, event);
    if (quoted.has(event.style))
      return { ...common, start: event.valueStart - 1, end: event.valueEnd + 1, value: written };
    if (!isBlock(event))
      return { ...common, start: event.valueStart, end: event.valueEnd, value: plainScalar(written) };
    // A block text begins with its sign, which stands in the line before it.
    const line = this.#text.lastIndexOf("\n", event.valueStart - 2) + 1;
    const sign = /[|>]/.exec(this.#text.slice(Math.max(line, after), event.valueStart));
    if (sign === null) throw new NotOrdinary();
    return { ...common, start: Math.max(line, after) + sign.index, end: event.valueEnd, value: written };
  }
}

/** As the other parser reads it: YAML 1.2 core, with numbers that look like one to everybody. */
function plainScalar(written: string): ScalarNode["value"] {
  // Most values are words.
  if (written.length > 5 && !/^[-\d]/.test(written)) return written;
  if (/^(?:~|null|Null|NULL|)$/.test(written)) return null;
  if (/^(?:true|True|TRUE)$/.test(written)) return true;
  if (/^(?:false|False|FALSE)$/.test(written)) return false;
  if (!/^-?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(written)) return written;
  const value = Number(written);
  return Math.abs(value) <= Number.MAX_SAFE_INTEGER ? value : written;
}
