import { conchae } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const environmentalLossSevere: CaseRule = {
  id: "environmental-loss-severe",
  scope: "case",
  family: "scoring",
  level: "warning",
  summary: "Severe loss with a crooked septum, or a concha all but gone, is not put down to the air alone.",
  protects:
    "Dust and gases cause mild, even loss; a severe case put down to ventilation leaves the toxin in the herd.",
  lookAlike:
    "Bad air on top of the toxin: that is loss_looks: undecided until the toxin gene has been looked for.",
  source: verified("Hamilton et al. 1999 (dust and ammonia without a pathogen: mild atrophy)"),
  bad: {
    case: "respiratory: {turbinates: {left: {dorsal: 2, ventral: 4}, right: {dorsal: 2, ventral: 4}, septum: marked, grades: {maff-1978: 5, embrapa-1993: 3}, loss_looks: environmental}}\nsamples: [{id: 01-A, from: respiratory.nares, into: dry-swab, for: [pcr]}]",
    visit: "environment: [{group: nursery-2, ammonia: 28 ppm, dust: 4.1 mg/m3}]",
  },
  good: {
    case: "respiratory: {turbinates: {left: {dorsal: 2, ventral: 4}, right: {dorsal: 2, ventral: 4}, septum: marked, grades: {maff-1978: 5, embrapa-1993: 3}, loss_looks: infectious}}\nsamples: [{id: 01-A, from: respiratory.nares, into: dry-swab, for: [pcr]}]",
  },
  check(one, report) {
    const nose = conchae(one);
    if (nose?.loss_looks !== "environmental") return;
    const worst = Math.max(0, ...nose.losses);
    if (worst >= 4 || (worst >= 3 && nose.septum === "marked"))
      report(
        `respiratory.turbinates.loss_looks: environmental, with ${worst >= 4 ? "a concha all but gone" : "severe loss and a crooked septum"}. Bad air alone causes mild loss (Hamilton et al. 1999); write undecided or infectious, and have it tested for the toxin gene.`,
        [...nose.path, "loss_looks"],
      );
  },
};
