/** What of a note was not taken, with its place in the note. */
import type { Misread } from "../../phrases/index.ts";
import { visible } from "../../words/visible.ts";
import { excerpt } from "../lint/excerpt.ts";
import type { Style } from "../page/style.ts";
import { wrapped } from "../page/width.ts";

/** @param width characters a line may have */
export function misreadText(note: string, misread: readonly Misread[], style: Style, width: number): string {
  return misread
    .flatMap(({ start, end, message }) => {
      const before = note.slice(0, start).split(/\r?\n/);
      const column = (before.at(-1)?.length ?? 0) + 1;
      const line = note.split(/\r?\n/)[before.length - 1] ?? "";
      const place = { line: before.length, column, length: end - start, excerpt: line };
      return [
        ...wrapped(`${style.level("error", "not taken")}: ${visible(message)}`, "", width, "  "),
        ...excerpt(place, width - 4).map((one) => `    ${style.quiet(one)}`),
      ];
    })
    .map((line) => `${line}\n`)
    .join("");
}
