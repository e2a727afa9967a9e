/** The line a message is about, with a caret under the place. */
import { visible } from "../../words/visible.ts";

const widest = 100;

/**
 * Two lines: the text and the caret. Long lines are cut around the place; nothing for a whole file (line 0).
 * @param column counted from 1
 */
export function excerpt(place: { line: number; column: number; length: number; excerpt: string }): string[] {
  if (place.line === 0 || place.excerpt.trim() === "") return [];
  const start = Math.max(0, place.column - 1 - 60);
  const cut = place.excerpt.slice(start, start + widest);
  const before = visible(cut.slice(0, place.column - 1 - start));
  const marks = Math.max(1, Math.min(place.length, cut.length - (place.column - 1 - start)));
  const margin = `${place.line} | `;
  return [
    `${margin}${visible(cut)}`,
    `${" ".repeat(margin.length - 2)}| ${" ".repeat(before.length)}${"^".repeat(marks)}`,
  ];
}
