import { formatPath, pathsMeet } from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import { markedLesions, morphologicDiagnoses, processOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const markedLesionUndiagnosed: CaseRule = {
  id: "marked-lesion-undiagnosed",
  scope: "case",
  family: "diagnosis",
  level: "note",
  summary: "In a case with diagnoses, each organ with a marked lesion has one.",
  protects: "The worst lesion of the pig falls out of the summary, which is all that most people read.",
  lookAlike:
    "A sign of the lesion that has the diagnosis: white skin, a bloody content, wide gut before a stenosis, the wide pelvis of a kidney. Name other organs of a diagnosis before its colon.",
  source: practice("common practice of reporting"),
  bad: {
    case: "liver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, severity: marked}]}\nsamples: ",
  },
  good: {
    case: 'liver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, severity: marked}]}\nsamples: \ndiagnosis: {morphologic: ["Liver: necrosis, multifocal, acute, marked"]}',
  },
  check(one, report) {
    if (one.record.diagnosis?.morphologic === undefined || markedLesions(one).length === 0) return;
    // A diagnosis that cannot be read may be the one.
    const atFault = one.faults.some(({ intended }) => pathsMeet(intended, ["diagnosis", "morphologic"]));
    if (atFault) return;
    const diagnoses = morphologicDiagnoses(one);
    // A diagnosis whose organ is not understood may be the one.
    if (diagnoses.length === 0 || diagnoses.some(({ organs }) => organs.length === 0)) return;
    const told = new Set<string>();
    for (const { organ, finding, path } of markedLesions(one)) {
      // White skin and black content are signs of the lesion that is diagnosed.
      const isSign = processOf(finding).laboratory === "no" || organ.definition.kind === "content";
      if (isSign || told.has(organ.id)) continue;
      told.add(organ.id);
      // Gut is wide before what narrows it, and by what is wrong with the next of its loops.
      const isWide = finding.process === "enlargement" || finding.process === "distension";
      if (
        isWide &&
        diagnoses.some(({ organs }) =>
          organs.some(({ system }) => system === organ.system && system === "intestine"),
        )
      )
        continue;
      const near = [organ.id, ...(sampleRules.sampled_by[organ.id] ?? [])];
      if (!diagnoses.some(({ organs }) => organs.some(({ id }) => near.includes(id))))
        report(
          `${formatPath(path)} is marked and no diagnosis names ${organ.id}. Add one under diagnosis.morphologic.`,
          path,
        );
    }
  },
};
