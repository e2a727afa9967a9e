import { parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelWithoutSamples: VisitRule = {
  id: "parcel-without-samples",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "A parcel names the samples that are in it.",
  protects: "Nobody can tell afterwards which sample went where, and none of its other facts can be checked.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { visit: parcelExample({ samples: "" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { name, path, samples } of parcelsOf(visit))
      if (samples.length === 0)
        reportVisit(
          `${name}: no sample is named. Write samples: [01-A, 01-B] with the numbers on the labels.`,
          path,
        );
  },
};
