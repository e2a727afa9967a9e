/** The reading of the snouts for people: a sentence a line, each with who says so. */
import type { SnoutReading } from "../../reading/index.ts";
import { count } from "../../words/listing.ts";
import { visible } from "../../words/visible.ts";
import type { Style } from "../page/style.ts";
import { wrapped } from "../page/wrap.ts";

const width = 100;

/** Nothing when no snout was examined. */
export const snoutText = (readings: readonly SnoutReading[], style: Style): string =>
  readings
    .flatMap(({ visit, snouts, statements }) => [
      "",
      style.heading(visible(`Snouts of visit ${visit} (${count(snouts, "snout")})`)),
      ...statements.flatMap(({ text, source }) => wrapped(visible(`${text} [${source}]`), "  - ", width)),
    ])
    .map((line) => `${line}\n`)
    .join("");
