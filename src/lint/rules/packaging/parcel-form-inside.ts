import { parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelFormInside: VisitRule = {
  id: "parcel-form-inside",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "The submission form lies in a plastic bag outside the second packaging.",
  protects:
    "Inside with the samples it is wet or bloody when they need it, and nobody can read it before opening.",
  source: {
    cite: "North Dakota State University veterinary diagnostic laboratory, submission guidelines",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ form: "inside-secondary" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (parcel.form === "inside-secondary")
        reportVisit(
          `${name}: the form lies with the samples. Put it into a plastic bag of its own between second and outer packaging.`,
          [...path, "form"],
        );
  },
};
