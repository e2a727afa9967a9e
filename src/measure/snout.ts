/** What a traced snout section says: ratios of the conchae to their cavity, side against side, and the septum. */
import { type Side, type SnoutPart, sides, snoutParts } from "./parts.ts";
import type { Region } from "./region.ts";
import { none, type Sided, some, type Value } from "./values.ts";

export interface SnoutMeasures {
  /** Perimeter of the conchae over that of their cavity, 0 or more (Collins, Backstrom & Brim 1989). */
  readonly perimeter_ratio: Sided;
  /** Area of the conchae over that of their cavity, 0 to 1 (the sense of Collins et al. 1989). */
  readonly concha_area_fraction: Sided;
  /** Air over cavity, per cent, 0 to 100 (the lineage of Done et al. 1984). */
  readonly free_area_percent: Sided;
  /** (left - right) / (left + right) of the perimeter ratios: -1 to 1, 0 when the sides are equal, below 0 when the left has less. */
  readonly asymmetry: Value;
  /** Greatest distance of the midline of the septum from the line between its ends, mm. */
  readonly septum_deviation: Value;
}

/** Areas in mm² and perimeters in mm by part. A concha that is gone has 0 and 0. */
export type Regions = ReadonlyMap<string, Region>;

/**
 * @param regions of the snout parts that were traced
 * @param septum deviation in mm; undefined when the septum was not traced
 * @returns undefined when no part of a snout was traced
 */
export function snoutMeasures(regions: Regions, septum: number | undefined): SnoutMeasures | undefined {
  if (septum === undefined && !snoutParts.some((part) => regions.has(part))) return undefined;
  const perimeter = ratios(regions, ({ perimeter }) => perimeter);
  const area = ratios(regions, ({ area }) => area);
  const free = ({ value, missing }: Value): Value => ({
    value: value === null ? null : 100 * (1 - value),
    missing,
  });
  return {
    perimeter_ratio: perimeter,
    concha_area_fraction: area,
    free_area_percent: { left: free(area.left), right: free(area.right), total: free(area.total) },
    asymmetry: asymmetry(perimeter),
    septum_deviation: septum === undefined ? none(["septum"]) : some(septum),
  };
}

/** Sum over the conchae divided by sum over the cavities. */
function ratios(regions: Regions, of: (region: Region) => number): Sided {
  const ratio = (asked: readonly Side[]): Value => {
    const cavities = asked.map((side): SnoutPart => `cavity-${side}`);
    const scrolls = asked.flatMap((side): SnoutPart[] => [`dorsal-${side}`, `ventral-${side}`]);
    const missing = [...cavities, ...scrolls].filter((part) => !regions.has(part));
    if (missing.length > 0) return none(missing);
    const sum = (parts: readonly string[]): number =>
      parts.reduce((total, part) => {
        const region = regions.get(part);
        return total + (region === undefined ? 0 : of(region));
      }, 0);
    return some(sum(scrolls) / sum(cavities));
  };
  return { left: ratio(["left"]), right: ratio(["right"]), total: ratio(sides) };
}

function asymmetry({ left, right }: Sided): Value {
  if (left.value === null || right.value === null) return none([...left.missing, ...right.missing]);
  const sum = left.value + right.value;
  // Nothing left on either side: equal.
  return some(sum === 0 ? 0 : (left.value - right.value) / sum);
}
