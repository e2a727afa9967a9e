/** How wide a text stands in a terminal, and how it is brought into lines or cut to a width. */

/** East Asian wide and fullwidth characters and pictures take two cells, marks on another character none. */
const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\u3000-\u303e\uff01-\uff60\uffe0-\uffe6]/u;
/** Most texts: every character takes one cell. */
const simple = /^[ -~\u00a1-\u02ff\u2010-\u2027]*$/;

/** Made when it is needed: most runs show simple texts alone. */
let graphemes: Intl.Segmenter | undefined;
/** V8 copies the whole text for every piece of it, so it is given some of the text at a time. */
const atATime = 200;

function* piecesOf(text: string): Generator<string> {
  graphemes ??= new Intl.Segmenter("en", { granularity: "grapheme" });
  for (let at = 0; at < text.length; ) {
    const some = text.slice(at, at + atATime);
    const pieces = [...graphemes.segment(some)].map(({ segment }) => segment);
    // The last may go on behind what was given.
    const last = at + some.length < text.length && pieces.length > 1 ? pieces.pop() : undefined;
    yield* pieces;
    at += some.length - (last?.length ?? 0);
  }
}
const cellsOf = (piece: string): number => (wide.test(piece) ? 2 : /^\p{M}+$/u.test(piece) ? 0 : 1);

/** Cells of a terminal that a text takes. @param text made safe to show before */
export const displayWidth = (text: string): number => (simple.test(text) ? text.length : cellsIn(text));

function cellsIn(text: string): number {
  let cells = 0;
  for (const piece of piecesOf(text)) cells += cellsOf(piece);
  return cells;
}

/** As many blanks behind the text, or before it, as it is narrower than `width`. */
export const padded = (text: string, width: number, right = false): string => {
  const blanks = " ".repeat(Math.max(0, width - displayWidth(text)));
  return right ? `${blanks}${text}` : `${text}${blanks}`;
};

/** The text in exactly `width` cells: blanks behind it, or cut with `..` at its end. @param width 2 or more */
export function fitted(text: string, width: number): string {
  if (displayWidth(text) <= width) return padded(text, width);
  return padded(`${cutAt(text, width - 2)}..`, width);
}

/** As much of the text as `width` cells hold. */
function cutAt(text: string, width: number): string {
  let cut = "";
  let used = 0;
  for (const piece of piecesOf(text)) {
    used += cellsOf(piece);
    if (used > width) break;
    cut += piece;
  }
  return cut;
}

/** Words as they stay together: a number with its % sign. */
export const wordsOf = (text: string): string[] => text.split(/\s+(?!%)/);

/**
 * Lines of at most `width` characters; the first begins with `first`, the others with `blanks`: as many, unless given. A
 * word that is longer stays whole.
 */
export function wrapped(
  text: string,
  first = "",
  width = 80,
  blanks: string = " ".repeat(first.length),
): string[] {
  const lines: string[] = [];
  let line = first;
  let used = displayWidth(first);
  let empty = true;
  for (const word of wordsOf(text)) {
    const cells = displayWidth(word);
    if (!empty && used + 1 + cells > width) {
      lines.push(line);
      line = blanks;
      used = displayWidth(blanks);
      empty = true;
    }
    line = empty ? `${line}${word}` : `${line} ${word}`;
    used += empty ? cells : cells + 1;
    empty = false;
  }
  return [...lines, line];
}

/** Lines of at most `width` characters, in which a longer word is broken. @param width 4 or more */
export const folded = (text: string, width: number, blanks = ""): string[] =>
  displayWidth(text) <= width
    ? [text]
    : wrapped(text, "", width, blanks).flatMap((line) => broken(line, width));

function broken(line: string, width: number): string[] {
  const lines: string[] = [];
  let part = "";
  let used = 0;
  for (const piece of piecesOf(line)) {
    const cells = cellsOf(piece);
    if (used + cells > width) {
      lines.push(part);
      [part, used] = ["", 0];
    }
    part += piece;
    used += cells;
  }
  return [...lines, part];
}
