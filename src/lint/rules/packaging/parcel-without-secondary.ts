import { answer, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelWithoutSecondary: VisitRule = {
  id: "parcel-without-secondary",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "A leak-proof second packaging lies round the containers.",
  protects: "Of three layers this is the one that holds when the first has failed.",
  source: {
    cite: "UN3373 packing instruction P650 (road) and PI650 (air); Swiss Expert Committee for Biosafety, transport sheet category B",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ secondary_leakproof: "no" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (answer(parcel.secondary_leakproof) === false)
        reportVisit(
          `${name}: there is no leak-proof second packaging. Put the containers with their absorbent into a closed leak-proof bag or box, fragile ones wrapped apart.`,
          [...path, "secondary_leakproof"],
        );
  },
};
