/** Files that could not be read, and cases that cannot be counted, for people: file, place, what is wrong. */
import type { Fault } from "../cases/index.ts";
import { visible } from "../words/visible.ts";
import { excerpt } from "./lint/excerpt.ts";
import type { Style } from "./page/style.ts";
import { wrapped } from "./page/width.ts";

/** @param width characters a line may have */
export function faultsText(faults: readonly Fault[], style: Style, width: number): string {
  return faults
    .flatMap((fault) => {
      const place = fault.line === 0 ? "" : `:${fault.line}:${fault.column}`;
      return [
        ...wrapped(
          `${style.heading(`${visible(fault.file)}${place}`)}: ${style.level("error", fault.kind === "unreadable" ? "not read" : "not used")}: ${visible(fault.message)}`,
          "",
          width,
          "  ",
        ),
        ...excerpt(fault, width - 4).map((line) => `    ${style.quiet(line)}`),
      ];
    })
    .map((line) => `${line}\n`)
    .join("");
}
