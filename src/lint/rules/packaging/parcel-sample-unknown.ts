import { parcelsOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { nearest } from "../../../words/nearest.ts";
import { practice, type VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelSampleUnknown: VisitRule = {
  id: "parcel-sample-unknown",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "Every sample that a parcel names is recorded in a case of the visit.",
  protects: "The laboratory reports on a number that belongs to no pig.",
  lookAlike:
    "A sample of a pig without a case, such as blood of pen mates: give that pig a short case, or list its tube in the case that it was taken for.",
  source: practice(
    "common practice at laboratories: containers are checked against the submission form on arrival",
  ),
  bad: { visit: parcelExample({ samples: "[01-A, 01-B, 01-Z]" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    if (visit.record.parcels === undefined || !visit.complete) return;
    // A number that cannot be read may be the one.
    const unread = visit.cases.some(({ record, faults }) =>
      record.samples === undefined
        ? faults.some(({ intended }) => intended[0] === "samples")
        : record.samples.some(({ id }) => id === ""),
    );
    if (unread) return;
    const parcels = parcelsOf(visit);
    const packed = new Set(parcels.flatMap(({ samples }) => samples.map(({ id }) => id)));
    const taken = visit.cases.flatMap((one) => (one.record.samples ?? []).map(({ id }) => id));
    const left = taken.filter((id) => !packed.has(id));
    for (const { name, samples } of parcels)
      for (const { id, path, taken: sample } of samples)
        if (sample === undefined)
          reportVisit(
            `${name}: there is no sample "${id}". ${guess(id, left)}Record the sample in its case, or correct the number.`,
            path,
          );
  },
};

/** Longer lists are not printed. */
const longList = 6;

/** What was meant can only be a sample that is in no parcel yet. */
function guess(id: string, left: readonly string[]): string {
  const near = left.filter((one) => nearest(id, [one]) !== undefined);
  if (near.length === 1) return `Did you mean ${near[0]}? `;
  if (left.length === 0) return "Every sample of the visit is in a parcel. ";
  if (left.length > longList) return "";
  return `Not in a parcel yet: ${listing(left)}. `;
}
