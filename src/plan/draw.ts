/** A random draw that can be repeated: same list, same seed, same pigs. */
import { createHash } from "node:crypto";
import { seededRandom } from "../statistics/index.ts";
import { grouped } from "../words/grouped.ts";
import type { Unit } from "./frame.ts";

/** Name of the generator, as printed with every draw. */
export const generatorName = "xoshiro128** seeded by SplitMix64, partial Fisher-Yates shuffle";

/** What came out. */
export interface Drawn {
  /** Places in the list, from 0, in the order drawn. */
  readonly chosen: readonly number[];
  /** The same for the reserve. */
  readonly reserve: readonly number[];
}

/** A number of units of a list, and a reserve. */
export interface DrawOptions {
  readonly take: number;
  readonly reserve: number;
  /** 0 to 9 007 199 254 740 991. */
  readonly seed: number;
  /** Take these numbers from each group instead of from the whole list. */
  readonly each?: boolean;
}

/**
 * Draws without replacement, every unit as likely as every other; with `each`, group after group in the order of
 * the list, by the same generator.
 *
 * @throws RangeError when more are wanted than there are, naming the group, or the seed is out of its range.
 */
export function draw(frame: readonly Unit[], { take, reserve, seed, each = false }: DrawOptions): Drawn {
  const random = seededRandom(seed);
  const chosen: number[] = [];
  const kept: number[] = [];
  for (const { name, places } of each ? byGroup(frame) : [{ name: "the list", places: [...frame.keys()] }]) {
    const wanted = take + reserve;
    if (wanted > places.length) {
      throw new RangeError(
        `${wanted} cannot be drawn from ${name}, which holds ${places.length}; ask for fewer`,
      );
    }
    for (let i = 0; i < wanted; i++) {
      const j = i + random.below(places.length - i);
      const drawn = places[j] ?? 0;
      places[j] = places[i] ?? 0;
      places[i] = drawn;
      (i < take ? chosen : kept).push(drawn);
    }
  }
  return { chosen, reserve: kept };
}

function byGroup(frame: readonly Unit[]): { name: string; places: number[] }[] {
  const groups = grouped(frame.keys(), (place) => frame[place]?.group ?? "the list");
  return [...groups].map(([name, places]) => ({ name, places }));
}

/** SHA-256 of the list as UTF-8 text, one unit a line, each line ended by LF: that of a clean tag file. */
export const frameHash = (frame: readonly Unit[]): string =>
  createHash("sha256")
    .update(frame.map(({ tag }) => `${tag}\n`).join(""))
    .digest("hex");
