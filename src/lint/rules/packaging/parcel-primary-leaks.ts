import { answer, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelPrimaryLeaks: VisitRule = {
  id: "parcel-primary-leaks",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "The containers of a parcel are leak-proof and closed.",
  protects: "A leaking pot spoils every other sample of the parcel and wets the hands that open it.",
  source: {
    cite: "UN3373 packing instruction P650 (road) and PI650 (air); Swiss Expert Committee for Biosafety, transport sheet category B",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ primary_leakproof: "no" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (answer(parcel.primary_leakproof) === false)
        reportVisit(
          `${name}: the containers are not leak-proof. Tighten the lids, tape them, and pack nothing that still drips.`,
          [...path, "primary_leakproof"],
        );
  },
};
