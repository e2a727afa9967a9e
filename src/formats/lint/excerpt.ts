/** The line a message is about, with a caret under the place. */
import { visible } from "../../words/visible.ts";

const widest = 100;

/**
 * Two lines: the text and the caret. Long lines are cut around the place; nothing for a whole file (line 0).
 * @param place.column counted from 1
 * @param width characters a line may have
 */
export function excerpt(
  place: { line: number; column: number; length: number; excerpt: string },
  width: number,
): string[] {
  if (place.line === 0 || place.excerpt.trim() === "") return [];
  const margin = `${place.line} | `;
  const room = Math.min(width - margin.length, widest);
  const start = Math.max(0, place.column - 1 - Math.floor(room * 0.6));
  const cut = place.excerpt.slice(start, start + room);
  const before = visible(cut.slice(0, place.column - 1 - start));
  const marks = Math.max(1, Math.min(place.length, cut.length - (place.column - 1 - start)));
  return [
    `${margin}${visible(cut)}`,
    `${" ".repeat(margin.length - 2)}| ${" ".repeat(before.length)}${"^".repeat(marks)}`,
  ];
}
