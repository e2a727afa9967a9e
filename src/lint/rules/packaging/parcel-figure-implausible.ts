import { quantity } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import { type Parcel, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelFigureImplausible: VisitRule = {
  id: "parcel-figure-implausible",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary:
    "Weight, volume and sides of a parcel are ones that a parcel can have, and its mark fits on its box.",
  protects:
    "The limits of carriers are held against these figures; grams typed as kilograms turn away a parcel that was in order, and a mark of 60 cm was never looked at.",
  source: plausible.source,
  bad: { visit: parcelExample({ weight: "1200 kg" }) },
  good: { visit: parcelExample({ weight: "1.2 kg" }) },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit)) {
      for (const [key, kind] of figures) {
        const value = quantity(kind, parcel[key]);
        const most = mostOf(parcel, key);
        const highest = quantity(kind, most);
        // A mark that is larger than its box is told below.
        const isBelow = key === "mark_side" && parcel.outer_side !== undefined;
        if (value !== undefined && highest !== undefined && value > highest && !isBelow)
          reportVisit(
            `${name}: ${key} ${parcel[key]} is hard to believe of one parcel; up to ${most} would be (from memory, wide on purpose). Check the point and the unit.`,
            [...path, key],
          );
      }
      const [mark, outer] = [quantity("length", parcel.mark_side), quantity("length", parcel.outer_side)];
      if (mark !== undefined && outer !== undefined && mark > outer)
        reportVisit(
          `${name}: the mark (${parcel.mark_side}) is larger than the box it is on (${parcel.outer_side}). Check mm and cm of mark_side and outer_side.`,
          [...path, "mark_side"],
        );
    }
  },
};

const figures = [
  ["weight", "mass"],
  ["dry_ice", "mass"],
  ["largest_primary", "volume"],
  ["total_volume", "volume"],
  ["outer_side", "length"],
  ["mark_side", "length"],
] as const;

/** `150 kg`: the most that is believed of a figure. */
function mostOf({ by }: Parcel, key: (typeof figures)[number][0]): string {
  const byHand: Partial<Record<typeof key, string>> = by === "hand" ? plausible.parcel_by_hand : {};
  return byHand[key] ?? plausible.parcel[key];
}
