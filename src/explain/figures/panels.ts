/** Small drawings side by side, each with its grade and what the grade means. */
import { type Piece, placed, text, width, wrapped } from "../../drawings/svg.ts";

export interface Panel {
  /** The grade, or another short name. */
  readonly name: string;
  readonly words: string;
  /** The drawing, with its middle at x 0 and its top at y 0. */
  readonly body: string;
}

export interface Grid {
  readonly across: number;
  /** Height of a drawing before it is made smaller, and how much smaller. */
  readonly tall: number;
  readonly scale: number;
}

const lineHeight = 18;
const edge = 10;

export function panels(
  title: string,
  list: readonly Panel[],
  { across, tall, scale }: Grid,
  note: readonly string[] = [],
): Piece {
  const wide = (width - 2 * edge) / across;
  const characters = Math.floor((wide - 12) / 7.2);
  const rows = Array.from({ length: Math.ceil(list.length / across) }, (_, row) =>
    list.slice(row * across, (row + 1) * across),
  );
  let y = 28;
  const drawn = rows.map((row) => {
    const written = row.map(({ words }) => wrapped(words, characters));
    const foot = y + tall * scale + 22;
    const cells = row.map(({ name, body }, index) => {
      const x = edge + (index + 0.5) * wide;
      return [
        placed(body, x, y, scale),
        text(x, foot, name, { class: "ink strong", anchor: "middle" }),
        ...(written[index] ?? []).map((words, at) =>
          text(x, foot + (at + 1) * lineHeight, words, { anchor: "middle" }),
        ),
      ].join("\n");
    });
    y = foot + Math.max(...written.map(({ length }) => length)) * lineHeight + 16;
    return cells.join("\n");
  });
  const lines = note.flatMap((words) => wrapped(words, 90));
  const under = lines.map((words, index) =>
    text(edge + 10, y + 8 + index * lineHeight, words, { class: "soft" }),
  );
  return {
    height: y + lines.length * lineHeight,
    body: [text(edge + 10, 16, title, { class: "soft strong" }), ...drawn, ...under].join("\n"),
  };
}
