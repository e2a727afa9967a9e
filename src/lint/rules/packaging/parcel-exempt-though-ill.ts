import { isFresh, isShipped, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelExemptThoughIll: VisitRule = {
  id: "parcel-exempt-though-ill",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "Fresh samples of sick pigs do not travel as exempt.",
  protects:
    "Exempt is for samples in which an agent is hardly to be expected; a sick pig is opened because one is.",
  source: {
    cite: "UN Model Regulations 2.6.3.2.3 (exempt animal specimens); from memory",
    confidence: "from-memory",
  },
  bad: { visit: parcelExample({ category: "exempt" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path, samples } of parcelsOf(visit)) {
      if (parcel.category !== "exempt" || !isShipped(parcel)) continue;
      const ill = samples.find(
        ({ taken }) =>
          taken !== undefined && isFresh(taken.sample) && taken.one.signs.some((sign) => sign !== "none"),
      );
      if (ill !== undefined)
        reportVisit(
          `${name}: ${ill.id} is fresh material of a sick pig and goes as exempt. Send it as category B under the UN3373 mark.`,
          [...path, "category"],
        );
    }
  },
};
