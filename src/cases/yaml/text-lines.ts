/** Splits a text into lines and turns offsets into line and column. */
import type { Place } from "./document.ts";

const carriageReturn = 0x0d;

export class TextLines {
  readonly text: string;
  readonly #starts: number[] = [0];

  constructor(text: string) {
    this.text = text;
    for (let i = text.indexOf("\n"); i >= 0; i = text.indexOf("\n", i + 1)) this.#starts.push(i + 1);
  }

  /** Line and column (from 1) of a character offset. */
  at(offset: number): { line: number; column: number } {
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.#starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - (this.#starts[low] ?? 0) + 1 };
  }

  /** The place of a stretch of text, cut at the end of its first line. */
  place({ start, end }: { readonly start: number; readonly end: number }): Place {
    const at = this.at(start);
    const [from, to] = this.#span(at.line);
    const restOfLine = to - from - at.column + 1;
    return { ...at, length: Math.max(1, Math.min(end - start, restOfLine)) };
  }

  /** The text of a line, counted from 1, without its line end. */
  line(number: number): string {
    return this.text.slice(...this.#span(number));
  }

  /** Where a line begins and where its line end does. */
  #span(number: number): [start: number, end: number] {
    const start = this.#starts[number - 1] ?? this.text.length;
    const end = (this.#starts[number] ?? this.text.length + 1) - 1;
    return [start, end > start && this.text.charCodeAt(end - 1) === carriageReturn ? end - 1 : end];
  }
}
