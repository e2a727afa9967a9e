import { unknownName } from "../../../cases/index.ts";
import { parcelExample } from "../../parcel-example.ts";
import { parcelsOf } from "../../parcels.ts";
import type { VisitRule } from "../../rule.ts";

export const parcelSampleUnknown: VisitRule = {
  id: "parcel-sample-unknown",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "Every sample that a parcel names stands in a case of the visit.",
  protects: "The laboratory reports on a number that belongs to no pig.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { visit: parcelExample({ samples: "[01-A, 01-B, 01-Z]" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    // A number that cannot be read may be the one.
    const unread = visit.cases.some(({ record, faults }) =>
      record.samples === undefined
        ? faults.some(({ meant }) => meant[0] === "samples")
        : record.samples.some(({ id }) => id === ""),
    );
    if (!visit.complete || unread) return;
    const known = visit.cases.flatMap((one) => (one.record.samples ?? []).map(({ id }) => id));
    for (const { name, samples } of parcelsOf(visit))
      for (const { id, path, taken } of samples)
        if (taken === undefined)
          reportVisit(
            `${name}: ${unknownName(id, known, "sample")} Write the sample into its case, or correct the number.`,
            path,
          );
  },
};
