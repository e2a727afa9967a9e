import { isShipped, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const dryIceWeightMissing: VisitRule = {
  id: "dry-ice-weight-missing",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "The net weight of dry ice is recorded and marked on the outside (UN1845).",
  protects:
    "Dry ice turns to gas that suffocates in a closed van or hold; the carrier must know how much there is.",
  source: { cite: "UN1845, dry ice marked with net kilograms; from memory", confidence: "from-memory" },
  bad: {
    visit: `${parcelExample({ samples: "[01-A]", formalin_apart: "", coolant: "none", coolant_place: "" })}\n${parcelExample({ samples: "[01-B]", formalin_apart: "", coolant: "dry-ice", vented: "yes" }).split("\n").slice(1).join("\n")}`,
  },
  good: {
    visit: `${parcelExample({ samples: "[01-A]", formalin_apart: "", coolant: "none", coolant_place: "" })}\n${parcelExample({ samples: "[01-B]", formalin_apart: "", coolant: "dry-ice", dry_ice: "2 kg", vented: "yes" }).split("\n").slice(1).join("\n")}`,
  },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (parcel.coolant === "dry-ice" && parcel.dry_ice === undefined && isShipped(parcel))
        reportVisit(
          `${name}: dry ice without its net weight. Write dry_ice: 2 kg, and mark the outside UN1845 with the same.`,
          [...path, "dry_ice"],
          "key",
        );
  },
};
