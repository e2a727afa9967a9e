import { formatPath } from "../../../cases/index.ts";
import { findingsOf, isSampled, markedLesions, processOf, samplesOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const lesionNotSampled: CaseRule = {
  id: "lesion-not-sampled",
  scope: "case",
  family: "sampling",
  level: "note",
  silent: "authority",
  summary: "If anything is sampled, so is the system of a marked lesion.",
  protects:
    "The worst organ is the one the laboratory should see; its agent and its histology make the diagnosis.",
  lookAlike:
    "A lesion whose cause the eye can see, such as a hernia; the node that drains a sampled lesion; the same process in a second organ; another organ of a sampled system: nothing is asked.",
  source: practice("the lesion and its edge are sampled first; common practice"),
  bad: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 6, severity: marked}]}\ndiagnosis: {morphologic: ['Spleen: infarcts, multifocal, acute, marked']}",
  },
  good: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 6, severity: marked}]}\ndiagnosis: {morphologic: ['Spleen: infarcts, multifocal, acute, marked']}\nsamples: [{id: 01-A, from: lymphoid.spleen, site: edge of lesion, into: formalin, for: [histology]}]",
  },
  check(one, report) {
    if (one.record.samples === undefined || samplesOf(one).length === 0) return;
    const answered = new Set(
      findingsOf(one)
        .filter(({ organ }) => samplesOf(one).some(({ sample }) => sample.from === organ.id))
        .map(({ finding }) => finding.process),
    );
    const found = markedLesions(one).find(
      ({ organ, finding }) =>
        processOf(finding).laboratory !== "no" &&
        organ.definition.kind !== "content" &&
        !answered.has(finding.process) &&
        !isSampled(one, organ),
    );
    if (found === undefined) return;
    const { organ, finding, path } = found;
    report(
      `${formatPath(path)}: marked ${finding.process} (${organ.definition.title.toLowerCase()}), and samples were taken, but none of it. Put the edge of the lesion into formalin and keep another piece chilled.`,
      path,
    );
  },
};
