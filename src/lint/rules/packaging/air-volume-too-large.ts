import { quantity } from "../../../cases/index.ts";
import { transportLimits } from "../../../knowledge/index.ts";
import { parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const airVolumeTooLarge: VisitRule = {
  id: "air-volume-too-large",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "By air a parcel holds no more than 4 l of liquid.",
  protects: "The carrier refuses the parcel, or opens it and leaves it in the sun.",
  source: {
    cite: "PI650 (IATA), read in packaging guides: outer packaging at most 4 l, coolant not counted",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ by: "air", total_volume: "5 l" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    const { value, unit } = transportLimits.air_volume;
    for (const { parcel, name, path } of parcelsOf(visit)) {
      const size = quantity("volume", parcel.total_volume);
      if (size !== undefined && size > value && parcel.by === "air")
        reportVisit(
          `${name}: ${parcel.total_volume} of liquid are too much for one parcel by air. Split them into parcels of ${value} ${unit} or less, or send them by road.`,
          [...path, "total_volume"],
        );
    }
  },
};
