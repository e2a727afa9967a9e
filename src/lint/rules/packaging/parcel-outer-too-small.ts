import { quantity } from "../../../cases/index.ts";
import { transportLimits } from "../../../knowledge/index.ts";
import { isShipped, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelOuterTooSmall: VisitRule = {
  id: "parcel-outer-too-small",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "One face of the outer packaging measures at least 100 by 100 mm.",
  protects: "Smaller parcels get lost, and mark and address do not fit.",
  source: {
    cite: "Swiss Expert Committee for Biosafety, transport sheet category B (one face at least 100 x 100 mm)",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ outer_side: "80 mm" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    const { value, unit } = transportLimits.outer_side;
    for (const { parcel, name, path } of parcelsOf(visit)) {
      const size = quantity("length", parcel.outer_side);
      if (size !== undefined && size < value && isShipped(parcel))
        reportVisit(
          `${name}: the largest face of the outer packaging is only ${parcel.outer_side} wide. Take a box with a face of ${value} ${unit} by ${value} ${unit} or more.`,
          [...path, "outer_side"],
        );
    }
  },
};
