/**
 * The quick way through an ordinary file: js-yaml reads events with their places ten times faster than the parser that
 * explains errors. Whatever is not plain (references, tags, block texts, anything wrong) is left to that parser.
 */
import { EVENT_ID, type Event, getScalarValue, parseEvents } from "js-yaml";
import type { MapEntry, ScalarNode, SourceNode } from "./source-tree.ts";

/** Tabs, references, tags, directives, document marks, very long lines; and nesting that a recursive parser should not meet. */
const unusual =
  /\t|(?:^|[\s[{,:-])(?:[&*]\S|!)|^%|^---|^\.\.\.|^(?:[ ]*[-?:][ ]+){9}|^[ ]*-[ ]+#|^ {80}|(?:[[{][^\]}]*){20}|.{1000}/m;
const longest = 100_000;

/** Styles of scalars that have quotes around them. */
const quoted = new Set([2, 3]);
const plain = 1;
const flow = 2;

class NotOrdinary extends Error {}

/** The tree of an ordinary text, or undefined where the other parser has to look. */
export function quickTree(text: string): SourceNode | undefined {
  if (text.length > longest || unusual.test(text)) return undefined;
  try {
    return new Builder(text).tree();
  } catch {
    // Whatever is wrong, the other parser finds it again and says it properly.
    return undefined;
  }
}

class Builder {
  readonly #text: string;
  readonly #events: readonly Event[];
  #at = 0;

  constructor(text: string) {
    this.#text = text;
    this.#events = parseEvents(text, {});
  }

  tree(): SourceNode {
    if (this.#next().type !== EVENT_ID.DOCUMENT) throw new NotOrdinary();
    const root = this.#node(0);
    if (this.#next().type !== EVENT_ID.POP || this.#at !== this.#events.length) throw new NotOrdinary();
    return root;
  }

  #next(): Event {
    const event = this.#events[this.#at++];
    if (event === undefined) throw new NotOrdinary();
    return event;
  }

  /** @param after where the text before this node ends; an empty value stands there */
  #node(after: number): SourceNode {
    const event = this.#next();
    if (event.type !== EVENT_ID.SCALAR && event.type !== EVENT_ID.MAPPING && event.type !== EVENT_ID.SEQUENCE)
      throw new NotOrdinary();
    if (event.anchorStart >= 0 || event.tagStart >= 0) throw new NotOrdinary();
    if (event.type === EVENT_ID.SCALAR) return this.#scalar(event, after);
    const isFlow = event.style === flow;
    return event.type === EVENT_ID.MAPPING ? this.#map(event.start, isFlow) : this.#list(event.start, isFlow);
  }

  #map(start: number, isFlow: boolean): SourceNode {
    const entries: MapEntry[] = [];
    let end = start + 1;
    while (!this.#ends()) {
      const key = this.#node(end);
      if (key.kind !== "scalar" || key.start === key.end) throw new NotOrdinary();
      const value = this.#node(key.end);
      // `{weight: 17,5 kg}` leaves a key without a value; the other parser puts it together again.
      if (isFlow && value.start === value.end) throw new NotOrdinary();
      entries.push({ key, value });
      end = value.end;
    }
    return { kind: "map", start, end: isFlow ? this.#closing("}", end) : end, entries, tag: undefined };
  }

  #list(start: number, isFlow: boolean): SourceNode {
    const items: SourceNode[] = [];
    let end = start + 1;
    while (!this.#ends()) {
      const item = this.#node(end);
      items.push(item);
      end = item.end;
    }
    return { kind: "list", start, end: isFlow ? this.#closing("]", end) : end, items, tag: undefined };
  }

  #ends(): boolean {
    if (this.#events[this.#at]?.type !== EVENT_ID.POP) return false;
    this.#at++;
    return true;
  }

  #closing(sign: string, from: number): number {
    const at = this.#text.indexOf(sign, from);
    if (at < 0) throw new NotOrdinary();
    return at + 1;
  }

  #scalar(event: Extract<Event, { type: typeof EVENT_ID.SCALAR }>, after: number): ScalarNode {
    const common = { kind: "scalar", anchor: undefined, tag: undefined } as const;
    if (event.valueStart < 0) return { ...common, start: after, end: after, value: null };
    const written = getScalarValue(this.#text, event);
    if (quoted.has(event.style))
      return { ...common, start: event.valueStart - 1, end: event.valueEnd + 1, value: written };
    if (event.style !== plain) throw new NotOrdinary();
    return { ...common, start: event.valueStart, end: event.valueEnd, value: plainScalar(written) };
  }
}

/** As the other parser reads it: YAML 1.2 core, with numbers that look like one to everybody. */
function plainScalar(written: string): ScalarNode["value"] {
  if (/^(?:~|null|Null|NULL|)$/.test(written)) return null;
  if (/^(?:true|True|TRUE)$/.test(written)) return true;
  if (/^(?:false|False|FALSE)$/.test(written)) return false;
  if (!/^-?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(written)) return written;
  const value = Number(written);
  return Math.abs(value) <= Number.MAX_SAFE_INTEGER ? value : written;
}
