import { quantity } from "../../../cases/index.ts";
import { transportLimits } from "../../../knowledge/index.ts";
import { parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const airPrimaryTooLarge: VisitRule = {
  id: "air-primary-too-large",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "By air no container holds more than 1 l of liquid.",
  protects: "The carrier refuses the parcel, or opens it and leaves it in the sun.",
  source: {
    cite: "PI650 (IATA), read in packaging guides: primary receptacle at most 1 l",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ by: "air", largest_primary: "1.5 l" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    const { value, unit } = transportLimits.air_primary;
    for (const { parcel, name, path } of parcelsOf(visit)) {
      const size = quantity("volume", parcel.largest_primary);
      if (size !== undefined && size > value && parcel.by === "air")
        reportVisit(
          `${name}: a container of ${parcel.largest_primary} is too large for the air. Split the liquid into containers of ${value} ${unit} or less, or send it by road.`,
          [...path, "largest_primary"],
        );
    }
  },
};
