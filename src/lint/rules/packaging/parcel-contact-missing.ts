import { isShipped, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelContactMissing: VisitRule = {
  id: "parcel-contact-missing",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "Name and telephone of a responsible person stand on the parcel.",
  protects: "When a parcel leaks or is held up, nobody knows whom to ring, and it waits until Monday.",
  source: {
    cite: "University of New Hampshire veterinary diagnostic laboratory, shipping supplies; UN3373 packing instruction P650 (road) and PI650 (air)",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ contact: "" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (parcel.contact === undefined && isShipped(parcel))
        reportVisit(
          `${name}: no responsible person is named. Write contact: name and telephone of somebody who answers, and put the same on the outside.`,
          [...path, "contact"],
          "key",
        );
  },
};
