import { quantity } from "../../../cases/index.ts";
import { transportLimits } from "../../../knowledge/index.ts";
import { parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const airWeightTooLarge: VisitRule = {
  id: "air-weight-too-large",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "By air a parcel holds no more than 4 kg of solid samples.",
  protects: "The carrier refuses the parcel, or opens it and leaves it in the sun.",
  source: {
    cite: "Arizona Veterinary Diagnostic Laboratory, packaging instructions; whole organs are exempt from memory",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ by: "air", weight: "5 kg" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    const { value, unit } = transportLimits.air_weight;
    for (const { parcel, name, path } of parcelsOf(visit)) {
      const size = quantity("mass", parcel.weight);
      if (size !== undefined && size > value && parcel.by === "air")
        reportVisit(
          `${name}: ${parcel.weight} of tissue are too much for one parcel by air. Split them into parcels of ${value} ${unit} or less, or send them by road.`,
          [...path, "weight"],
        );
    }
  },
};
