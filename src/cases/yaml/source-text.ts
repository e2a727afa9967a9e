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
  const before = text.slice(Math.max(0, node.start - 1000), node.start);
  const match = (sign === "!" ? /(!\S*)(?:\s+&\S+)?\s*$/ : /(&\S*)(?:\s+!\S*)?\s*$/).exec(before);
  if (match?.[1] === undefined) return { start: node.start, end: node.end };
  const start = node.start - before.length + match.index;
  return { start, end: start + match[1].length };
}

/**
 * Where the anchor of a value stands, if it may be the beginning of a text: not before quotes, numbers and quantities.
 */
export function textMark(value: ScalarNode["value"], node: Span, text: string): Span | undefined {
  const isText = value === null || (typeof value === "string" && !/^["'\d|>-]/.test(text.charAt(node.start)));
  return isText ? markBefore("&", node, text) : undefined;
}
