/** Running text in lines. */

/**
 * Lines of at most `width` characters; the first begins with `first`, the others with `blanks`: as many, unless given. A
 * number stays with its % sign.
 */
export function wrapped(
  text: string,
  first = "",
  width = 80,
  blanks: string = " ".repeat(first.length),
): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(/\s+(?!%)/)) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = blanks;
      empty = true;
    }
    line = empty ? `${line}${word}` : `${line} ${word}`;
    empty = false;
  }
  return [...lines, line];
}
