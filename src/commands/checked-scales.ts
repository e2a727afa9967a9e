/** Scale files of the practice, where there are any, with their worked examples worked out. */
import type { HouseScale } from "../cases/index.ts";

/** The same, in which the scale files carry what is wrong with their examples. Nothing is loaded where there are none. */
export async function withCheckedScales<Read extends { readonly scales: readonly HouseScale[] }>(
  read: Read,
): Promise<Read> {
  if (read.scales.length === 0) return read;
  const { checkHouseScales } = await import("../herd/check-house-scales.ts");
  return checkHouseScales(read);
}
