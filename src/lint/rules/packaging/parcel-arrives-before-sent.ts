import { isAfter, moment } from "../../../cases/index.ts";
import { parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelArrivesBeforeSent: VisitRule = {
  id: "parcel-arrives-before-sent",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "A parcel arrives after it was sent.",
  protects: "One of the two times is wrong, and with it every hour between sampling and test.",
  source: { cite: "order of events; common practice", confidence: "common-practice" },
  bad: { visit: parcelExample({ arrives: "2026-04-20T12:00" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit)) {
      const [sent, arrives] = [moment(parcel.sent), moment(parcel.arrives)];
      if (sent !== undefined && arrives !== undefined && isAfter(sent, arrives))
        reportVisit(
          `${name}: it arrives (${parcel.arrives}) before it is sent (${parcel.sent}). Correct one of them.`,
          [...path, "arrives"],
        );
    }
  },
};
