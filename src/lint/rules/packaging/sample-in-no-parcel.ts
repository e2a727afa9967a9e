import { parcelsOf, unpackedSamples } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { practice, type VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const sampleInNoParcel: VisitRule = {
  id: "sample-in-no-parcel",
  scope: "visit",
  family: "packaging",
  silent: "alarm",
  level: "warning",
  summary: "When parcels are recorded, every sample for a test is in one of them.",
  protects:
    "The sample that was left in the cool box is found on Friday, and it is the one the pig was opened for.",
  lookAlike:
    "A smear or a count of eggs that the practice does itself is passed; a sample that waits in the freezer for a first result is for: [archive] until it goes.",
  source: practice(
    "common practice of senders: samples are counted against the list before the parcel is closed",
  ),
  bad: {
    visit: parcelExample({ samples: "[01-A]", formalin_apart: "", coolant: "none", coolant_place: "" }),
  },
  good: { visit: parcelExample() },
  check(visit, _reportVisit, reportCase) {
    if (visit.record.parcels === undefined) return;
    // A number that cannot be read may be the one.
    if (
      visit.faults.some(
        ({ intended }) => intended[0] === "parcels" && (intended[2] ?? "samples") === "samples",
      )
    )
      return;
    const parcels = parcelsOf(visit);
    if (parcels.every(({ samples }) => samples.length === 0)) return;
    for (const { one, sample, index } of unpackedSamples(visit))
      reportCase(one)(
        `samples[${index}]: ${sample.id} is for ${listing(sample.for ?? [])} and is in no parcel of the visit. Send it and name it under parcels, or write for: [archive].`,
        ["samples", index, "id"],
      );
  },
};
