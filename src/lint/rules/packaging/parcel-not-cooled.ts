import { parcelsOf, samplesIn } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelNotCooled: VisitRule = {
  id: "parcel-not-cooled",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "Chilled and frozen samples travel with coolant.",
  protects: "At room temperature contaminants overgrow the agent within hours.",
  source: {
    cite: "chill fresh tissue, 2-8 °C: J. Carr, post-mortem samples (cold packs); Oregon State University veterinary diagnostic laboratory",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ coolant: "none", coolant_place: "" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const placed of parcelsOf(visit)) {
      const { parcel, name, path } = placed;
      const warm = samplesIn(placed).find(({ into }) => into === "chilled" || into === "frozen");
      if (parcel.coolant === "none" && warm !== undefined)
        reportVisit(
          `${name}: ${warm.id} is ${warm.into} and travels without coolant. Add cold packs outside the second packaging, or dry ice for what is frozen.`,
          [...path, "coolant"],
        );
    }
  },
};
