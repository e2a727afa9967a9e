import { type Case, valueAt } from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import { isFor, samplesOf } from "../../../record/index.ts";

import type { VisitRule } from "../../rule.ts";

export const toxinGeneNotAsked: VisitRule = {
  id: "toxin-gene-not-asked",
  scope: "visit",
  family: "sampling",
  level: "warning",
  silent: "authority",
  summary:
    "Where a snout has lost a whole concha, the toxin gene of Pasteurella multocida is asked for in the visit: a sample of a pig, or an entry under tests.",
  protects:
    "A high grade alone does not tell progressive from other atrophy; the toxin gene does, and it decides whether the herd is vaccinated.",
  source: sampleRules.toxin_gene.source,
  bad: {
    case: "respiratory: {turbinates: {left: {dorsal: 3, ventral: 4}, right: {dorsal: 3, ventral: 4}, septum: marked, grades: {maff-1978: 5, embrapa-1993: 3}}}",
  },
  good: {
    case: "respiratory: {turbinates: {left: {dorsal: 3, ventral: 4}, right: {dorsal: 3, ventral: 4}, septum: marked, grades: {maff-1978: 5, embrapa-1993: 3}}}\nsamples: [{id: 01-A, from: respiratory.nares, into: dry-swab, for: [pcr], note: toxin gene of P. multocida}]",
  },
  check(visit, _reportVisit, reportCase) {
    const { from } = sampleRules.toxin_gene;
    const asked = visit.cases.some((one) =>
      samplesOf(one).some(({ sample }) => from.includes(sample.from) && isFor(sample, "pcr", "culture")),
    );
    const tested = (visit.record.tests ?? []).some(({ test }) => test === "toxin-gene");
    const worst = visit.complete && !asked && !tested ? visit.cases.find(isWorst) : undefined;
    if (worst !== undefined)
      reportCase(worst)(
        "respiratory.turbinates: a concha is lost, and no pig of the visit has a sample for the toxin gene of P. multocida. Take a dry swab of both nostrils or the tonsil for PCR: {from: respiratory.nares, into: dry-swab, for: [pcr]}; of live mates if the head is gone.",
        ["respiratory", "turbinates"],
        "key",
      );
  },
};

function isWorst(one: Case): boolean {
  const { ventral_concha: lost, grades } = sampleRules.toxin_gene;
  const at = (...path: string[]): unknown => valueAt(one.record, ["respiratory", "turbinates", ...path]);
  const reaches = (value: unknown, limit: number): boolean => typeof value === "number" && value >= limit;
  // There normal conchae look lost, and snout-section-rostral says so.
  if (at("section") === "rostral-to-premolar-1") return false;
  return (
    reaches(at("left", "ventral"), lost) ||
    reaches(at("right", "ventral"), lost) ||
    Object.entries(grades).some(([scale, limit]) => reaches(at("grades", scale), limit))
  );
}
