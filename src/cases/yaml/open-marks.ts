/** Quotes and brackets that are not closed where they should be. */
import type { Span } from "./source-tree.ts";
import type { SyntaxMessage } from "./syntax-message.ts";
import type { TextLines } from "./text-lines.ts";

/** A quote or bracket with the stretch of text that it took in. */
interface Mark extends Span {
  readonly sign: string;
}

export interface OpenMarks {
  /** Never closed, or closed by the wrong bracket. */
  readonly brackets: Mark[];
  /** Never closed. */
  readonly quotes: Mark[];
  /** Closed on a later line. */
  readonly longQuotes: Mark[];
}

/** Every mark is held against the others. */
const mostMarks = 500;

/** Quotes and innermost brackets that are not closed. An open quote takes in everything after it, brackets too. */
export function openMarks({ brackets, quotes }: OpenMarks): SyntaxMessage[] {
  const open = [...brackets, ...quotes].sort((a, b) => a.start - b.start).slice(0, mostMarks);
  return open
    .filter((mark) => !open.some((other) => other.start > mark.start && other.start < mark.end))
    .map(({ sign, start, end }) => {
      const closing = { "[": "]", "{": "}" }[sign];
      const message =
        closing === undefined
          ? "this quote is not closed"
          : `this ${sign} is not closed; write ${closing} after the last entry`;
      return { start, end, message };
    });
}

/** A quote that closes only where the next text is quoted turns inside and outside about for the rest of the file. */
export function lateQuote(
  sorted: readonly Span[],
  open: OpenMarks,
  lines: TextLines,
): SyntaxMessage | undefined {
  const line = (offset: number): number => lines.at(offset).line;
  const lastOfLine = new Map(sorted.map(({ start }) => [line(start), start]));
  const quote = open.longQuotes.find(({ end }) => (lastOfLine.get(line(end)) ?? -1) >= end);
  const message = "this quote is closed only on a later line; is the closing quote missing on this one?";
  return quote && { ...quote, message };
}
