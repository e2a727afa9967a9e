import { parcelsOf } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelWithoutSamples: VisitRule = {
  id: "parcel-without-samples",
  scope: "visit",
  family: "packaging",
  silent: "alarm",
  level: "warning",
  summary: "A parcel names the samples that are in it.",
  protects:
    "Nobody can tell afterwards which sample went where, and nothing else about the parcel can be checked.",
  lookAlike:
    "A parcel of feed or water alone: these are samples of a case too, with an id that the parcel can name.",
  source: practice(
    "common practice of senders: the samples in a parcel are listed on the form that goes with it",
  ),
  bad: { visit: parcelExample({ samples: "" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { name, path, samples } of parcelsOf(visit))
      if (samples.length === 0)
        reportVisit(
          `${name}: it names no samples. Write samples: [01-A, 01-B] with the numbers on the labels.`,
          path,
        );
  },
};
