import { type Moment, moment } from "../../../cases/index.ts";
import { transportLimits } from "../../../knowledge/index.ts";
import { parcelsOf, samplesIn } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelTooLateForCulture: VisitRule = {
  id: "parcel-too-late-for-culture",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "Fresh samples for culture or virus isolation reach the laboratory within two days.",
  protects:
    "Contaminants overgrow the agent and viruses die; a negative culture of an old sample says nothing.",
  source: {
    cite: "fresh tissue at 2-8 °C delivered within 24-48 hours; hours from memory",
    confidence: "from-memory",
  },
  bad: { visit: parcelExample({ arrives: "2026-04-23T09:00" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    const { value, unit } = transportLimits.culture_hours;
    for (const placed of parcelsOf(visit)) {
      const { parcel, name, path } = placed;
      const arrival = moment(parcel.arrives);
      if (arrival === undefined) continue;
      const late = samplesIn(placed).find((sample) => {
        const taken = moment(sample.at);
        const asked = sample.for?.some((test) => test === "culture" || test === "virus-isolation");
        return (
          asked &&
          sample.into !== "frozen" &&
          taken !== undefined &&
          arrival.written - taken.written > hours(arrival, taken, value)
        );
      });
      if (late !== undefined)
        reportVisit(
          `${name}: ${late.id} is for ${listing(late.for ?? [])} and arrives more than ${value} ${unit} after it was taken (${late.at}, ${parcel.arrives}). Send it by express or by hand, or freeze it for PCR and tell the laboratory.`,
          [...path, "arrives"],
        );
    }
  },
};

/** Where only a day is known, the benefit of the doubt is that whole day. */
const hours = (arrival: Moment, taken: Moment, limit: number): number =>
  limit + (arrival.dayOnly ? 0 : taken.dayOnly ? 24 : 0);
