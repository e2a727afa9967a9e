/** What must hold before a scale applies, such as the level at which the snout was sawn. */
import { pathOf, valueAt } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";
import { pathIn, type Reading, shown } from "./reading.ts";

/**
 * The requirements of the scale that are not met.
 * @param entry the organ as recorded; undefined when it has no keys
 * @returns for each its path, and the reason when something else is written there
 */
export function unmetRequirements(scale: Scale, entry: object | undefined): Reading[] {
  return Object.entries(scale.requires ?? {}).flatMap(([read, allowed]): Reading[] => {
    const missing = pathIn(scale, read);
    const written = valueAt(entry, pathOf(read));
    if (written === undefined || written === null) return [{ value: null, missing }];
    if (allowed.includes(String(written))) return [];
    const reason = `${missing} is ${shown(written)}: this scale holds only for ${listing(allowed, "or")}`;
    return [{ value: null, missing, reason }];
  });
}
