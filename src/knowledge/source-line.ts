/** Who says so, in one line. */
import type { Source } from "../generated/knowledge.types.ts";

const confidenceWords: Record<Source["confidence"], string> = {
  verified: "read in the source",
  derived: "worked out from verified numbers",
  "common-practice": "common practice",
  "from-memory": "from memory, not checked against the source",
};

/** Of a work that was not opened itself. */
const secondHand = "read where others repeat it, not in the source itself";

/** `Dottori et al. 2007 (read in the source)` */
export const sourceLine = ({ cite, confidence, second_hand, note }: Source): string => {
  const words = second_hand && confidence === "verified" ? secondHand : confidenceWords[confidence];
  return `${cite} (${words})${note === undefined ? "" : `. ${note}`}`;
};
