import { parcelsOf, samplesIn } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const formalinOnDryIce: VisitRule = {
  id: "formalin-on-dry-ice",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "Samples in formalin do not travel on dry ice.",
  protects: "Formalin freezes on the way, and ice crystals tear the tissue that histology is to read.",
  source: {
    cite: "Veterinary Laboratory and Field Manual, 3rd ed., p. 517: formalin can freeze in transit and ruin tissue",
    confidence: "verified",
  },
  bad: { visit: parcelExample({ coolant: "dry-ice", dry_ice: "2 kg", vented: "yes" }) },
  good: {
    visit: `${parcelExample({ samples: "[01-A]", formalin_apart: "", coolant: "none", coolant_place: "" })}\n${parcelExample({ samples: "[01-B]", formalin_apart: "", coolant: "dry-ice", dry_ice: "2 kg", vented: "yes" }).split("\n").slice(1).join("\n")}`,
  },
  check(visit, reportVisit) {
    for (const placed of parcelsOf(visit)) {
      const { parcel, name, path } = placed;
      const fixed = samplesIn(placed).find(({ into }) => into === "formalin");
      if (fixed !== undefined && parcel.coolant === "dry-ice")
        reportVisit(
          `${name}: ${fixed.id} is in formalin and lies beside dry ice. Send fixed tissue in a parcel of its own, without ice.`,
          [...path, "coolant"],
        );
    }
  },
};
