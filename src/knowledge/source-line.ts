/** Who says so, in one line. */
import type { Source } from "../generated/knowledge.types.ts";

export const confidenceWords: Record<Source["confidence"], string> = {
  verified: "read in the source",
  derived: "worked out from verified numbers",
  "common-practice": "common practice",
  "from-memory": "from memory, not checked against the source",
};

/** `Dottori et al. 2007 (read in the source)` */
export const sourceLine = ({ cite, confidence, note }: Source): string =>
  `${cite} (${confidenceWords[confidence]})${note === undefined ? "" : `. ${note}`}`;
