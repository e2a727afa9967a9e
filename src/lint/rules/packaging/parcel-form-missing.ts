import { parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelFormMissing: VisitRule = {
  id: "parcel-form-missing",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "The submission form travels with the samples.",
  protects: "Samples without a form lie in the fridge until somebody rings, and the tests are guesswork.",
  source: {
    cite: "Animal Health Laboratory, University of Guelph: missing history is the first fault named; common practice",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ form: "missing" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (parcel.form === "missing")
        reportVisit(
          `${name}: no submission form. Put one in, in a plastic bag between second and outer packaging, with history, samples and tests.`,
          [...path, "form"],
        );
  },
};
