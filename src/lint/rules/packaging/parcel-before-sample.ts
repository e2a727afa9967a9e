import { isAfter, moment } from "../../../cases/index.ts";
import { parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelBeforeSample: VisitRule = {
  id: "parcel-before-sample",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "A parcel leaves after its samples were taken.",
  protects: "One of the two times is wrong, and with it every hour between sampling and test.",
  source: { cite: "order of events; common practice", confidence: "common-practice" },
  bad: { visit: parcelExample({ sent: "2026-04-20T09:50" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path, samples } of parcelsOf(visit)) {
      const sent = moment(parcel.sent);
      const late = samples.find(({ taken }) => {
        const at = moment(taken?.sample.at);
        return sent !== undefined && at !== undefined && isAfter(at, sent);
      });
      if (late !== undefined)
        reportVisit(
          `${name}: sent ${parcel.sent}, but ${late.id} was taken ${late.taken?.sample.at}. Correct one of them.`,
          [...path, "sent"],
        );
    }
  },
};
