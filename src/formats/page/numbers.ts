/** Numbers as people read them in a table. */
import { rounded } from "../../score/index.ts";

/** At most two decimals, half up, none where they are zero: 16.6, 3, 0.25, 0.31 for 0.305. A dash for null. */
export function number(value: number | null, decimals = 2): string {
  return value === null ? "–" : String(rounded(value, decimals));
}
