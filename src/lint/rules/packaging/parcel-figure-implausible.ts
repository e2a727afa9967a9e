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
    "The weight, volume and sides of a parcel are ones that a parcel can have, and its mark fits on the box.",
  protects:
    "These figures are checked against the limits of carriers: grams typed as kilograms turn away a parcel that was in order, and a mark of 60 cm passes though nobody measured it.",
  lookAlike:
    "A crate of whole carcasses that you drive yourself: by: hand has wider limits; beyond them check the unit.",
  source: plausible.source,
  bad: { visit: parcelExample({ weight: "1200 kg" }) },
  good: { visit: parcelExample({ weight: "1.2 kg" }) },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit)) {
      for (const [key, kind] of figures) {
        const value = quantity(kind, parcel[key]);
        const most = mostOf(parcel, key);
        const highest = quantity(kind, most);
        // A mark that is larger than its box is reported below.
        const isBelow = key === "mark_side" && parcel.outer_side !== undefined;
        if (value !== undefined && highest !== undefined && value > highest && !isBelow)
          reportVisit(
            `${name}: ${key} ${parcel[key]} is hard to believe of one parcel; the most that is believed is ${most} (from memory, wide on purpose). Check the decimal point and the unit.`,
            [...path, key],
          );
      }
      const [mark, outer] = [quantity("length", parcel.mark_side), quantity("length", parcel.outer_side)];
      if (mark !== undefined && outer !== undefined && mark > outer)
        reportVisit(
          `${name}: the mark (${parcel.mark_side}) is larger than the box it is on (${parcel.outer_side}). Check mark_side and outer_side for mm and cm.`,
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
