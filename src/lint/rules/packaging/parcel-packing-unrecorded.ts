import { packingDue, parcelsOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { practice, type VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelPackingUnrecorded: VisitRule = {
  id: "parcel-packing-unrecorded",
  scope: "visit",
  family: "packaging",
  level: "note",
  summary: "The record of a parcel says how it travels and how its layers are packed.",
  protects:
    "When samples arrive broken or warm, only the record tells whether the packing or the carrier was at fault.",
  lookAlike:
    "A parcel that a colleague packed: ask before it goes, or write by: hand where you took it, and outer box and mark are not asked.",
  source: practice("common practice of senders: the packing is checked before the parcel is closed"),
  bad: { visit: parcelExample({ absorbent: "", outer_rigid: "" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit)) {
      const missing = packingDue(parcel).filter((key) => parcel[key] === undefined);
      if (missing.length > 0)
        reportVisit(
          `${name}: ${listing(missing)} ${missing.length === 1 ? "is" : "are"} not recorded. Look at the parcel before it goes, and write down what you find.`,
          path,
        );
    }
  },
};
