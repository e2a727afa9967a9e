/** What the text says of a value beyond what a parser makes of it. */
import type { ScalarNode, Span } from "./source-tree.ts";

/**
 * Numbers are those that look like one to everybody: 0217 keeps its zero, 12e3 and 0x1f stay the text that they are on
 * an ear tag, and more digits than a number can hold are not rounded.
 */
export function asWritten(value: unknown, source: string | undefined): ScalarNode["value"] {
  if (typeof value === "string" || typeof value === "boolean") return value;
  if (typeof value !== "number") return null;
  const plain = source === undefined || /^-?(0|[1-9]\d*)(\.\d+)?$/.test(source);
  return plain && Math.abs(value) <= Number.MAX_SAFE_INTEGER ? value : (source ?? null);
}

/** Where a tag (!) or anchor (&) stands: before its node, with nothing but the other of them and space between. */
export function markBefore(sign: "!" | "&", node: Span, text: string): Span {
  const last = wordBefore(text, node.start);
  const other = sign === "!" ? "&" : "!";
  const words = text[last.start] === other ? [wordBefore(text, last.start), last] : [last];
  for (const { start, end } of words) {
    const at = text.slice(start, end).indexOf(sign);
    if (at >= 0) return { start: start + at, end };
  }
  return { start: node.start, end: node.end };
}

/** No tag or anchor stands further away, or is longer. */
const farthest = 1000;

/** What stands between blanks before a place. */
function wordBefore(text: string, place: number): Span {
  const first = Math.max(0, place - farthest);
  let end = place;
  while (end > first && /\s/.test(text.charAt(end - 1))) end--;
  let start = end;
  while (start > first && /\S/.test(text.charAt(start - 1))) start--;
  return { start, end };
}

/**
 * Where the anchor of a value stands, if it may be the beginning of a text: not before quotes, numbers and quantities.
 */
export function textMark(value: ScalarNode["value"], node: Span, text: string): Span | undefined {
  const isText = value === null || (typeof value === "string" && !/^["'\d|>-]/.test(text.charAt(node.start)));
  return isText ? markBefore("&", node, text) : undefined;
}
