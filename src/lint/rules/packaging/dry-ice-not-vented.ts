import { answer, parcelsOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const dryIceNotVented: VisitRule = {
  id: "dry-ice-not-vented",
  scope: "visit",
  family: "packaging",
  level: "error",
  summary: "A parcel with dry ice lets the gas out.",
  protects: "A tight box with dry ice bursts.",
  source: { cite: "UN1845 and P650; from memory", confidence: "from-memory" },
  bad: {
    visit: `${parcelExample({ samples: "[01-A]", formalin_apart: "", coolant: "none", coolant_place: "" })}\n${parcelExample({ samples: "[01-B]", formalin_apart: "", coolant: "dry-ice", dry_ice: "2 kg", vented: "no" }).split("\n").slice(1).join("\n")}`,
  },
  good: {
    visit: `${parcelExample({ samples: "[01-A]", formalin_apart: "", coolant: "none", coolant_place: "" })}\n${parcelExample({ samples: "[01-B]", formalin_apart: "", coolant: "dry-ice", dry_ice: "2 kg", vented: "yes" }).split("\n").slice(1).join("\n")}`,
  },
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (parcel.coolant === "dry-ice" && answer(parcel.vented) !== true)
        reportVisit(
          `${name}: ${parcel.vented === undefined ? "dry ice, and nothing said of a vent" : "dry ice in a parcel without a vent"}. Leave a way out for the gas (lid not taped all round), and write vented: yes.`,
          [...path, "vented"],
          parcel.vented === undefined ? "key" : "value",
        );
  },
};
