/** How wide a text stands in a terminal, and how it is cut to a width. */

/** East Asian wide and fullwidth characters and pictures take two cells, marks on another character none. */
const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\u3000-\u303e\uff01-\uff60\uffe0-\uffe6]/u;

const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });
const piecesOf = (text: string): string[] => [...graphemes.segment(text)].map(({ segment }) => segment);
const cells = (piece: string): number => (wide.test(piece) ? 2 : /^\p{M}+$/u.test(piece) ? 0 : 1);

/** Cells of a terminal that a text takes. @param text made safe to show before */
export const displayWidth = (text: string): number =>
  piecesOf(text).reduce((sum, piece) => sum + cells(piece), 0);

/** The text in exactly `width` cells: blanks behind it, or cut with `..` at its end. @param width 2 or more */
export function fitted(text: string, width: number): string {
  const whole = displayWidth(text);
  if (whole <= width) return `${text}${" ".repeat(width - whole)}`;
  let cut = "";
  let used = 0;
  for (const piece of piecesOf(text)) {
    if (used + cells(piece) > width - 2) break;
    cut += piece;
    used += cells(piece);
  }
  return `${cut}..${" ".repeat(width - 2 - used)}`;
}
