import { answer, isFresh, parcelsOf, samplesIn } from "../../../record/index.ts";
import { type VisitRule, verified } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const formalinNotApart: VisitRule = {
  id: "formalin-not-apart",
  scope: "visit",
  family: "packaging",
  level: "warning",
  summary: "Formalin is bagged separately from fresh tissue and smears.",
  protects: "The vapour kills the bacteria that were to be cultured and fixes unfixed smears.",
  lookAlike:
    "Pots sealed in a bag of their own in one box: that is what is asked, so write formalin_apart: yes. Samples in alcohol, feed and water are not counted as fresh.",
  source: verified(
    "vapour harms unfixed smears (guide of a veterinary laboratory for senders); effect on culture from memory",
  ),
  bad: { visit: parcelExample({ formalin_apart: "no" }) },
  good: { visit: parcelExample() },
  check(visit, reportVisit) {
    for (const placed of parcelsOf(visit)) {
      const { parcel, name, path } = placed;
      if (answer(parcel.formalin_apart) === true) continue;
      const samples = samplesIn(placed);
      if (samples.some(({ into }) => into === "formalin") && samples.some(isFresh))
        reportVisit(
          `${name}: formalin and fresh samples travel together${parcel.formalin_apart === undefined ? ", and nothing says that they are bagged separately" : ""}. Seal the formalin pots in a bag of their own, or send two parcels, and write formalin_apart: yes.`,
          [...path, "formalin_apart"],
          parcel.formalin_apart === undefined ? "key" : "value",
        );
    }
  },
};
