/** Puts the keys at the top of a file into the order of the format. */
import type { SourceDocument } from "../cases/yaml/document.ts";

/**
 * Moves the keys with all the lines that belong to them. Nothing is moved where a comment or an empty line stands
 * between two keys, because nobody can tell to which of them it belongs.
 * @returns the new text, or undefined when the keys are in order or must stay where they are
 */
export function inKeyOrder(
  text: string,
  document: SourceDocument,
  order: readonly string[],
): string | undefined {
  const { value } = document;
  if (typeof value !== "object" || value === null) return undefined;
  const lines = text.match(/[^\n]+\n?|\n/g) ?? [];
  const places = Object.keys(value)
    .map((key) => ({ rank: order.indexOf(key), ...document.whereKey([key]) }))
    .sort((a, b) => a.line - b.line);
  const first = places[0];
  if (first === undefined || places.some(({ rank, column }) => rank < 0 || column !== 1)) return undefined;
  if (places.every(({ rank }, index) => index === 0 || rank > (places[index - 1]?.rank ?? -1)))
    return undefined;
  const head = lines.slice(0, first.line - 1);
  const blocks = places.map(({ rank, line }, index) => ({
    rank,
    lines: lines.slice(line - 1, (places[index + 1]?.line ?? lines.length + 1) - 1),
  }));
  if (
    lines.some(isMarker) ||
    !head.every(isModeline) ||
    blocks.some((block) => isBetween(block.lines.at(-1)))
  )
    return undefined;
  return [...head, ...blocks.sort((a, b) => a.rank - b.rank).flatMap((block) => block.lines)].join("");
}

const isMarker = (line: string): boolean => /^(---|\.\.\.)\s/.test(line);
const isModeline = (line: string): boolean => /^#\s*yaml-language-server:/.test(line);
/** An empty line or a comment of its own; a line without its end cannot be moved either. */
const isBetween = (line: string | undefined): boolean =>
  line === undefined || !line.endsWith("\n") || /^\s*(#|$)/.test(line);
