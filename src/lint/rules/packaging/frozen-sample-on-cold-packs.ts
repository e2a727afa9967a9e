import { parcelsOf, samplesIn } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const frozenSampleOnColdPacks: VisitRule = {
  id: "frozen-sample-on-cold-packs",
  scope: "visit",
  family: "packaging",
  level: "note",
  summary: "Frozen samples travel on dry ice, or arrive the same day.",
  protects: "What thaws on the way and is frozen again is of little use to virus isolation and toxicology.",
  source: { cite: "frozen tissue on dry ice; from memory", confidence: "from-memory" },
  bad: {
    case: "samples:\n  - {id: 01-A, from: respiratory.lungs, site: left cranial and left middle and right cranial and right middle lobe, into: formalin, for: [histology], at: 2026-04-20T10:05}\n  - {id: 01-B, from: respiratory.lungs, into: frozen, for: [pcr], at: 2026-04-20T10:06}",
    visit: parcelExample(),
  },
  good: {
    case: "samples:\n  - {id: 01-A, from: respiratory.lungs, site: left cranial and left middle and right cranial and right middle lobe, into: formalin, for: [histology], at: 2026-04-20T10:05}\n  - {id: 01-B, from: respiratory.lungs, into: frozen, for: [pcr], at: 2026-04-20T10:06}",
    visit: parcelExample({ by: "hand", arrives: "2026-04-20T18:00" }),
  },
  check(visit, reportVisit) {
    for (const placed of parcelsOf(visit)) {
      const { parcel, name, path } = placed;
      const frozen = samplesIn(placed).find(({ into }) => into === "frozen");
      const sameDay =
        parcel.arrives !== undefined && parcel.sent?.slice(0, 10) === parcel.arrives.slice(0, 10);
      if (frozen !== undefined && !sameDay && (parcel.coolant === "cold-packs" || parcel.coolant === "ice"))
        reportVisit(
          `${name}: ${frozen.id} is frozen and travels on ${parcel.coolant} overnight. Use dry ice (net weight marked, vented), or leave it in the freezer until somebody can take it.`,
          [...path, "coolant"],
        );
    }
  },
};
