import { quantity } from "../../../cases/index.ts";
import { transportLimits } from "../../../knowledge/index.ts";
import { isShipped, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelMarkTooSmall: VisitRule = {
  id: "parcel-mark-too-small",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "The sides of the UN3373 mark measure at least 50 mm.",
  protects: "A mark that cannot be read from a step away counts as missing.",
  source: {
    cite: "Radboud University, packaging and shipping of dangerous goods (sides of 50 mm or more, letters of 6 mm)",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ mark_side: "30 mm" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    const { value, unit } = transportLimits.mark_side;
    for (const { parcel, name, path } of parcelsOf(visit)) {
      const size = quantity("length", parcel.mark_side);
      if (size !== undefined && size < value && isShipped(parcel))
        reportVisit(
          `${name}: the UN3373 mark has sides of ${parcel.mark_side}. Use one of ${value} ${unit} or more, with letters of 6 mm.`,
          [...path, "mark_side"],
        );
    }
  },
};
