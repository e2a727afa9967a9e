/** The parts of a text that is to be merged: entries with the lines above them, and which of them are the same thing in three versions. */
import { isDeepStrictEqual } from "node:util";
import { keyWord, type SourceNode } from "../cases/yaml/source-tree.ts";
import { plainValue } from "../cases/yaml/source-value.ts";
import { pairsOf } from "./pairs.ts";

/** The text is written in a way in which its parts cannot be told apart. */
export class Unsafe extends Error {}

/** A value with the text that it stands in. */
export interface Part {
  readonly text: string;
  readonly node: SourceNode;
}

export const isFlow = ({ text, node }: Part): boolean => "{[".includes(text[node.start] ?? " ");
export const dataOf = ({ node }: Part): unknown => plainValue(node);
export const isSame = (a: Part, b: Part): boolean => isDeepStrictEqual(dataOf(a), dataOf(b));
export const isBlank = (part: Part | undefined): boolean => part === undefined || dataOf(part) === null;

/** One entry of a group of keys or of a list: `lead` are lines above it, `head` what stands before its value. */
export interface Chunk extends Part {
  readonly key: string | undefined;
  readonly lead: string;
  readonly head: string;
  readonly body: string;
  readonly post: string;
}

export const whole = ({ lead, head, body, post }: Chunk): string => `${lead}${head}${body}${post}`;

/** Three versions of one thing; it may be missing on any side. */
export interface Three<Value> {
  readonly base: Value | undefined;
  readonly ours: Value | undefined;
  readonly theirs: Value | undefined;
}

/** Groups of keys, or lists, both in brackets or both on lines. */
export const isOneKind = (a: Part, b: Part): boolean =>
  a.node.kind === b.node.kind && (a.node.kind === "map" || a.node.kind === "list") && isFlow(a) === isFlow(b);

const lineStart = (text: string, at: number): number => text.lastIndexOf("\n", at - 1) + 1;
export const columnOf = ({ text, node }: Part): number => node.start - lineStart(text, node.start);
export const isOnOwnLine = (part: Part): boolean =>
  part.text.slice(lineStart(part.text, part.node.start), part.node.start).trim() === "";

/** Where the text of a value ends; what stands on lines of its own has them whole, with the comment behind its last. */
function endOf(part: Part): number {
  const { text, node } = part;
  if ((node.kind !== "map" && node.kind !== "list") || isFlow(part)) return node.end;
  return lineEnd(text, node.end);
}

/** Behind the line end at or after a place; a text in lines has taken its own along. */
function lineEnd(text: string, at: number): number {
  if (text[at - 1] === "\n") return at;
  const feed = text.indexOf("\n", at);
  return feed < 0 ? text.length : feed + 1;
}

export const bodyOf = (part: Part): string => part.text.slice(part.node.start, endOf(part));

/** What only one side changed, or both alike. */
export function picked(base: string | undefined, ours: string, theirs: string): string | undefined {
  if (ours === theirs || theirs === base) return ours;
  if (ours === base) return theirs;
  return undefined;
}

/** The entries of a group of keys or of a list; each has the lines above it that follow the entry before. */
function chunksOf(part: Part): Chunk[] {
  const { text, node } = part;
  const entries: readonly { key: SourceNode | undefined; value: SourceNode | undefined }[] =
    node.kind === "map"
      ? node.entries
      : node.kind === "list"
        ? node.items.map((value) => ({ key: undefined, value }))
        : [];
  const inFlow = isFlow(part);
  const isTop = columnOf(part) === 0 && node.kind === "map";
  let from = isTop ? 0 : node.start;
  return entries.map(({ key, value }, index) => {
    if (value === undefined) throw new Unsafe();
    const inner = { text, node: value };
    // A blank value is placed where its key ends, before the colon.
    const isEmpty = value.start === value.end;
    const open = isEmpty ? text.indexOf(":", value.end) + 1 : value.start;
    const close = isEmpty ? open : endOf(inner);
    const stop = inFlow ? close : lineEnd(text, close);
    const start = inFlow ? (key ?? value).start : from;
    const begin = inFlow ? start : Math.max(from, lineStart(text, (key ?? value).start));
    const isInset = !inFlow && index === 0 && !isTop;
    const chunk: Chunk = {
      ...inner,
      key: node.kind === "map" ? keyWord(key) : undefined,
      // A dash may stand on a line above its item.
      lead: key === undefined ? "" : text.slice(start, begin),
      head: `${isInset ? " ".repeat(columnOf(part)) : ""}${text.slice(key === undefined ? start : begin, open)}`,
      body: text.slice(open, close),
      post: text.slice(close, stop),
    };
    from = stop;
    return chunk;
  });
}

interface Aligned {
  readonly chunks: ReadonlyMap<string, Three<Chunk>>;
  /** Every chunk of ours and theirs, in the order of the one who changed it. */
  readonly order: readonly string[];
  readonly oursIds: readonly string[];
}

/** Which entries are the same thing in the three versions. @param list the name of the list */
export function aligned(base: Part | undefined, ours: Part, theirs: Part, list: string): Aligned {
  const parts = {
    base: base === undefined ? [] : chunksOf(base),
    ours: chunksOf(ours),
    theirs: chunksOf(theirs),
  };
  const ids =
    ours.node.kind === "map"
      ? {
          base: parts.base.map(({ key }) => key ?? ""),
          ours: parts.ours.map(({ key }) => key ?? ""),
          theirs: parts.theirs.map(({ key }) => key ?? ""),
        }
      : idsOfItems(parts, list);
  const chunks = new Map<string, Three<Chunk>>();
  for (const id of new Set([...ids.base, ...ids.ours, ...ids.theirs])) {
    const of = (side: keyof typeof parts): Chunk | undefined => {
      const at = ids[side].indexOf(id);
      return at < 0 ? undefined : parts[side][at];
    };
    chunks.set(id, { base: of("base"), ours: of("ours"), theirs: of("theirs") });
  }
  if (!isFlow(ours) && columnOf(ours) !== columnOf(theirs)) throw new Unsafe();
  const isReordered = (side: readonly string[]): boolean => {
    const common = side.filter((id) => ids.base.includes(id));
    return common.join("\0") !== ids.base.filter((id) => side.includes(id)).join("\0");
  };
  const isTheirs = isReordered(ids.theirs) && !isReordered(ids.ours);
  const order = isTheirs ? joined(ids.theirs, ids.ours) : joined(ids.ours, ids.theirs);
  return { chunks, order, oursIds: ids.ours };
}

/** The second order laid into the first: what only it has comes behind what it stands behind there, and what was added to the first. */
function joined(first: readonly string[], second: readonly string[]): string[] {
  const order = [...first];
  for (const [index, id] of second.entries()) {
    if (order.includes(id)) continue;
    let place = order.indexOf(second[index - 1] ?? "") + 1;
    while (place > 0 && place < order.length && !second.includes(order[place] ?? "")) place++;
    order.splice(place, 0, id);
  }
  return order;
}

function idsOfItems(parts: Readonly<Record<"base" | "ours" | "theirs", readonly Chunk[]>>, list: string) {
  const values = {
    base: parts.base.map(dataOf),
    ours: parts.ours.map(dataOf),
    theirs: parts.theirs.map(dataOf),
  };
  const idsOf = (side: "ours" | "theirs"): (string | undefined)[] => {
    const pairs = pairsOf(list, values.base, values[side]);
    return values[side].map((_, at) => {
      const was = pairs.find(({ after }) => after === at)?.before;
      return was === undefined ? undefined : `base ${was}`;
    });
  };
  const [ours, theirs] = [idsOf("ours"), idsOf("theirs")];
  const fresh = (side: readonly (string | undefined)[]): number[] =>
    side.flatMap((id, at) => (id === undefined ? [at] : []));
  const [newOurs, newTheirs] = [fresh(ours), fresh(theirs)];
  const both = pairsOf(
    list,
    newOurs.map((at) => values.ours[at]),
    newTheirs.map((at) => values.theirs[at]),
    true,
  );
  for (const { before, after } of both) {
    const [one, other] = [newOurs[before ?? -1], newTheirs[after ?? -1]];
    if (one !== undefined) ours[one] = `ours ${one}`;
    if (other !== undefined) theirs[other] = one === undefined ? `theirs ${other}` : `ours ${one}`;
  }
  return {
    base: values.base.map((_, at) => `base ${at}`),
    ours: ours.map((id) => id ?? ""),
    theirs: theirs.map((id) => id ?? ""),
  };
}

/** What stands below the last entry of a file. */
export const tailOf = (part: Part | undefined): string =>
  part === undefined ? "" : part.text.slice(endOf(part));

/** Entries in brackets, those that stood side by side parted as they were. */
export function flowText(
  ours: Part,
  texts: readonly string[],
  order: readonly string[],
  was: readonly string[],
): string {
  const { text, node } = ours;
  const spans = (
    node.kind === "map"
      ? node.entries.map(({ key, value }) => [key?.start ?? 0, value])
      : node.kind === "list"
        ? node.items.map((value) => [value.start, value])
        : []
  ) as readonly (readonly [number, SourceNode | undefined])[];
  const start = (at: number): number => spans[at]?.[0] ?? node.start + 1;
  const end = (at: number): number => {
    const value = spans[at]?.[1];
    return value === undefined ? node.start + 1 : value.start === value.end ? value.end + 1 : value.end;
  };
  const gaps = [
    text.slice(node.start, start(0)),
    ...was.slice(1).map((_, at) => text.slice(end(at), start(at + 1))),
  ];
  const tail = text.slice(end(was.length - 1), node.end);
  if ([...gaps, tail].some((gap) => gap.includes("#"))) throw new Unsafe();
  let made = gaps[0] ?? "{";
  for (const [index, one] of texts.entries()) {
    const at = was.indexOf(order[index] ?? "");
    const isNext = at > 0 && was[at - 1] === order[index - 1];
    made += `${index === 0 ? "" : isNext ? gaps[at] : ", "}${one}`;
  }
  return made + tail;
}
