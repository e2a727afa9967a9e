import { type Alarm, findAlarms } from "../../../alarms/index.ts";
import { answer, type PlacedParcel, parcelsOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { fromMemory, type VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelCategoryTooLow: VisitRule = {
  id: "parcel-category-too-low",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary:
    "Material that is category A in any form, or is declared category A, does not travel under the mark of category B.",
  protects:
    "A category A parcel under a category B mark endangers those who handle it, and sending it is an offence.",
  lookAlike:
    "A pig whose alarm was excluded since: the rule speaks all the same; pack its samples apart, and ask the authority as what they may travel.",
  source: fromMemory(
    "UN Model Regulations 2.6.3 (Nipah virus in any form, other agents as cultures); from memory, confirm",
  ),
  bad: { visit: parcelExample({ category: "A" }) },
  good: { visit: parcelExample({ category: "A", mark: "no", mark_side: "" }) },
  check(visit, reportVisit) {
    for (const placed of parcelsOf(visit)) {
      const { parcel, name, path } = placed;
      if (parcel.category === "A" && answer(parcel.mark) === true)
        reportVisit(
          `${name}: it is declared category A and carries the UN3373 mark, which is for category B. Send category A as UN2814 or UN2900 under packing instruction P620, with a carrier who accepts it.`,
          [...path, "mark"],
        );
      if (parcel.category === "A") continue;
      const dangerous = alarmsIn(placed).find(({ pattern }) => pattern.category_a);
      if (dangerous !== undefined)
        reportVisit(
          `${name}: samples from a pig that may have ${listing(dangerous.pattern.diseases, "or")} are category A in any form. They travel as UN2814, and only on the orders of the authority; write category: A.`,
          [...path, "category"],
        );
    }
  },
};

/** The alarms of the pigs whose samples are in the parcel, answered or not. */
const alarmsIn = ({ samples }: PlacedParcel): Alarm[] =>
  [...new Set(samples.flatMap(({ taken }) => taken?.one ?? []))].flatMap(findAlarms);
