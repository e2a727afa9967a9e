import { answer, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelWithoutAbsorbent: VisitRule = {
  id: "parcel-without-absorbent",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "There is absorbent material for the whole volume between container and second packaging.",
  protects: "One broken tube runs through the parcel; a wet parcel is stopped by the carrier.",
  source: {
    cite: "UN3373 packing instruction P650 (road) and PI650 (air); Swiss Expert Committee for Biosafety, transport sheet category B",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ absorbent: "no" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (answer(parcel.absorbent) === false)
        reportVisit(
          `${name}: there is no absorbent material. Put enough round the containers to drink up all of the liquid.`,
          [...path, "absorbent"],
        );
  },
};
