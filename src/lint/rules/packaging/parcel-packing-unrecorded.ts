import { isShipped, type Parcel, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelPackingUnrecorded: VisitRule = {
  id: "parcel-packing-unrecorded",
  scope: "visit",
  family: "packaging",
  level: "note",
  summary: "A recorded parcel says how it travels and how its layers are packed.",
  protects:
    "When samples arrive broken or warm, the record is all that tells whether it was the packing or the carrier.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { visit: parcelExample({ absorbent: "", outer_rigid: "" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit)) {
      const missing = due(parcel).filter((key) => parcel[key] === undefined);
      if (missing.length > 0)
        reportVisit(
          `${name}: not recorded are ${missing.join(", ")}. Look at the parcel before it goes, and write them down.`,
          path,
        );
    }
  },
};

const always = [
  "sent",
  "by",
  "category",
  "primary_leakproof",
  "absorbent",
  "secondary_leakproof",
  "form",
] as const;

/** What a parcel should say; outside and mark matter only to a carrier. */
function due(parcel: Parcel): (keyof Parcel)[] {
  const marked = parcel.category === "A" || parcel.category === "exempt" ? [] : (["mark"] as const);
  return isShipped(parcel) ? [...always, "outer_rigid", ...marked] : [...always];
}
