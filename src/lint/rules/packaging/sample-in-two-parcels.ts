import { parcelsOf } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const sampleInTwoParcels: VisitRule = {
  id: "sample-in-two-parcels",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "A sample is in one parcel only.",
  protects: "One of the two laboratories waits for it, and nobody knows where it is.",
  lookAlike:
    "One organ divided between two laboratories: each part is a sample with an id of its own, and both may travel.",
  source: practice("one number for one container; common practice at laboratories"),
  bad: {
    visit: parcelExample({}, { samples: "[01-B]", formalin_apart: "" }),
  },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    if (visit.record.parcels === undefined) return;
    const seen = new Map<string, string>();
    for (const { name, samples } of parcelsOf(visit))
      for (const { id, path } of samples) {
        const before = seen.get(id);
        if (before !== undefined)
          reportVisit(
            `${name}: ${id} is in ${before === name ? "it twice" : `${before} as well`}. Name it only where it is; a sample that was divided gets two numbers.`,
            path,
          );
        seen.set(id, name);
      }
  },
};
