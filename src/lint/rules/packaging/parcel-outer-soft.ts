import { answer, isShipped, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelOuterSoft: VisitRule = {
  id: "parcel-outer-soft",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "The outer packaging is rigid.",
  protects: "A padded envelope is thrown and crushed like a letter, and glass breaks in it.",
  source: {
    cite: "UN3373 packing instruction P650 (road) and PI650 (air); Swiss Expert Committee for Biosafety, transport sheet category B",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ outer_rigid: "no" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (answer(parcel.outer_rigid) === false && isShipped(parcel))
        reportVisit(
          `${name}: the outer packaging is not rigid. Use a box that keeps its shape when it is dropped or stacked.`,
          [...path, "outer_rigid"],
        );
  },
};
