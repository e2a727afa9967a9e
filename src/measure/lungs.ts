/** What a lung traced lobe by lobe says: the affected share of each lobe. */
import { lobeId, lobes } from "./parts.ts";
import type { Regions } from "./snout.ts";
import { none, some, type Value } from "./values.ts";

export interface LungMeasures {
  /** Affected area over lobe area, per cent, 0 to 100, by lobe (left_cranial ... accessory); lobes that were traced. */
  readonly affected_percent: Readonly<Record<string, Value>>;
}

/** @param affected mm² by lobe; a traced lobe that is not in it has none
 *  @returns undefined when no part of a lung was traced */
export function lungMeasures(
  regions: Regions,
  affected: ReadonlyMap<string, number>,
): LungMeasures | undefined {
  const entries = lobes.flatMap((lobe): [string, Value][] => {
    const whole = regions.get(lobeId(lobe));
    const area = affected.get(lobe);
    if (whole === undefined) return area === undefined ? [] : [[lobe, none([lobeId(lobe)])]];
    // A drawing may reach over the border of the lobe by a hand's breadth; more than the lobe is not affected.
    return [[lobe, some(Math.min(100, (100 * (area ?? 0)) / whole.area))]];
  });
  return entries.length === 0 ? undefined : { affected_percent: Object.fromEntries(entries) };
}
