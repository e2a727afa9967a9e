import { type Alarm, findAlarms } from "../../../alarms/index.ts";
import { answer, type PlacedParcel, parcelsOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelCategoryTooLow: VisitRule = {
  id: "parcel-category-too-low",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "What is category A in any form, or is declared so, does not travel under the mark of category B.",
  protects:
    "A parcel of category A under a B mark endangers those who handle it, and sending it is an offence.",
  source: {
    cite: "UN Model Regulations 2.6.3 (Nipah virus in any form, other agents as cultures); from memory, confirm",
    confidence: "from-memory",
  },
  bad: { visit: parcelExample({ category: "A" }) },
  good: { visit: parcelExample({ category: "A", mark: "no", mark_side: "" }) },
  check(visit, reportVisit) {
    for (const placed of parcelsOf(visit)) {
      const { parcel, name, path } = placed;
      const dangerous = alarmsIn(placed).find(({ pattern }) => pattern.category_a);
      if (parcel.category === "A" && answer(parcel.mark) === true)
        reportVisit(
          `${name}: category A under a UN3373 mark. UN3373 is for category B; category A goes as UN2814 or UN2900 under packing instruction P620, by a carrier who takes it.`,
          [...path, "mark"],
        );
      else if (dangerous !== undefined && parcel.category !== "A")
        reportVisit(
          `${name}: samples of a pig that may have ${listing(dangerous.pattern.diseases, "or")} are category A in any form. They leave as UN2814 and only as the authority orders; write category: A.`,
          [...path, "category"],
        );
    }
  },
};

/** The alarms of the pigs whose samples are in the parcel, answered or not. */
const alarmsIn = ({ samples }: PlacedParcel): Alarm[] =>
  [...new Set(samples.flatMap(({ taken }) => taken?.one ?? []))].flatMap(findAlarms);
