import { parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelCoolantInside: VisitRule = {
  id: "parcel-coolant-inside",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "Ice and cold packs lie outside the second packaging.",
  protects: "Melting ice floats the containers and washes labels off; dry ice in a closed bag bursts it.",
  source: { cite: "P650; from memory", confidence: "from-memory" },
  bad: { visit: parcelExample({ coolant_place: "inside-secondary" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (parcel.coolant_place === "inside-secondary" && parcel.coolant !== "none")
        reportVisit(
          `${name}: the coolant lies with the samples. Put it between second and outer packaging.`,
          [...path, "coolant_place"],
        );
  },
};
