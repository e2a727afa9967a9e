import { answer, isShipped, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelMarkMissing: VisitRule = {
  id: "parcel-mark-missing",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "A parcel of category B carries the UN3373 mark with the proper name beside it.",
  protects:
    "Without the mark the carrier may refuse the parcel, and whoever finds it broken does not know what is in it.",
  source: {
    cite: "UN3373 packing instruction P650 (road) and PI650 (air); Swiss Expert Committee for Biosafety, transport sheet category B",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ mark: "no" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (
        answer(parcel.mark) === false &&
        parcel.category !== "A" &&
        parcel.category !== "exempt" &&
        isShipped(parcel)
      )
        reportVisit(
          `${name}: the UN3373 mark is not on it. Mark it UN3373 with BIOLOGICAL SUBSTANCE, CATEGORY B beside the diamond.`,
          [...path, "mark"],
        );
  },
};
