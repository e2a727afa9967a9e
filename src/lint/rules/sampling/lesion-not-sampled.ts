import { formatPath } from "../../../cases/index.ts";
import { isSampled, markedLesions, processOf, samplesOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const lesionNotSampled: CaseRule = {
  id: "lesion-not-sampled",
  scope: "case",
  family: "sampling",
  level: "note",
  silent: "authority",
  summary: "If anything is sampled, a marked lesion is.",
  protects:
    "The worst organ is the one the laboratory should see; its agent and its histology make the diagnosis.",
  lookAlike:
    "A lesion whose cause the eye can see, such as a hernia or a rupture, is not asked about; nor is one whose system was sampled as a whole.",
  source: practice("the lesion and its edge are sampled first; common practice"),
  bad: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 6, severity: marked}]}\ndiagnosis: {morphologic: ['Spleen: infarcts, multifocal, acute, marked']}",
  },
  good: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 6, severity: marked}]}\ndiagnosis: {morphologic: ['Spleen: infarcts, multifocal, acute, marked']}\nsamples: [{id: 01-A, from: lymphoid.spleen, site: edge of lesion, into: formalin, for: [histology]}]",
  },
  check(one, report) {
    if (one.record.samples === undefined || samplesOf(one).length === 0) return;
    const seen = new Set<string>();
    for (const { organ, finding, path } of markedLesions(one)) {
      if (processOf(finding).laboratory === "no") continue;
      if (seen.has(organ.id) || isSampled(one, organ.id)) continue;
      seen.add(organ.id);
      report(
        `${formatPath(path)}: marked ${finding.process} (${organ.definition.title.toLowerCase()}), and samples were taken, but none of it. Put the edge of the lesion into formalin and keep another piece chilled.`,
        path,
      );
    }
  },
};
