import type { Case } from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import { conchae, isFor, samplesOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";

export const toxinGeneNotAsked: VisitRule = {
  id: "toxin-gene-not-asked",
  scope: "visit",
  family: "sampling",
  level: "warning",
  silent: "authority",
  summary:
    "Where a snout has lost a whole concha, the toxin gene of Pasteurella multocida is asked for in the visit: by a sample from a pig, or an entry under tests.",
  protects:
    "A high grade alone does not tell progressive atrophic rhinitis from other atrophy; the toxin gene does, and it decides whether the herd is vaccinated.",
  lookAlike:
    "A herd in which the toxin was tested before: write that test under tests in visit.yaml where it falls within the visit, or accept the finding with its date.",
  source: sampleRules.toxin_gene.source,
  bad: {
    case: "respiratory: {turbinates: {left: {dorsal: 3, ventral: 4}, right: {dorsal: 3, ventral: 4}, septum: marked, grades: {maff-1978: 5, embrapa-1993: 3}}}",
  },
  good: {
    case: "respiratory: {turbinates: {left: {dorsal: 3, ventral: 4}, right: {dorsal: 3, ventral: 4}, septum: marked, grades: {maff-1978: 5, embrapa-1993: 3}}}\nsamples: [{id: 01-A, from: respiratory.nares, into: dry-swab, for: [pcr], note: toxin gene of P. multocida}]",
  },
  check(visit, _reportVisit, reportCase) {
    const worst = visit.complete ? visit.cases.find(isWorst) : undefined;
    if (worst === undefined) return;
    const { from } = sampleRules.toxin_gene;
    const asked = visit.cases.some((one) =>
      samplesOf(one).some(({ sample }) => from.includes(sample.from) && isFor(sample, "pcr", "culture")),
    );
    const tested = (visit.record.tests ?? []).some(({ test }) => test === "toxin-gene");
    if (!asked && !tested)
      reportCase(worst)(
        "respiratory.turbinates: a concha is lost, but no pig of the visit has a sample for the toxin gene of P. multocida. Take a dry swab of both nostrils or the tonsil for PCR: {from: respiratory.nares, into: dry-swab, for: [pcr]}; from live pen mates if the head is gone.",
        ["respiratory", "turbinates"],
        "key",
      );
  },
};

function isWorst(one: Case): boolean {
  const snout = conchae(one);
  if (snout === undefined) return false;
  const { ventral_concha: lost, grades } = sampleRules.toxin_gene;
  const reaches = (value: number | undefined, limit: number): boolean =>
    value !== undefined && value >= limit;
  // There normal conchae look lost, and snout-section-rostral says so.
  if (snout.section === "rostral-to-premolar-1") return false;
  return (
    reaches(snout.left.ventral, lost) ||
    reaches(snout.right.ventral, lost) ||
    Object.entries(grades).some(([scale, limit]) => reaches(snout.grades[scale], limit))
  );
}
