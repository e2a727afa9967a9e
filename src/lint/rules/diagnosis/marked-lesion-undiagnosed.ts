import { formatPath, pathsMeet } from "../../../cases/index.ts";
import { markedLesions, morphologicDiagnoses } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const markedLesionUndiagnosed: CaseRule = {
  id: "marked-lesion-undiagnosed",
  scope: "case",
  family: "diagnosis",
  level: "note",
  summary: "In a case with diagnoses, each organ with a marked lesion has one.",
  protects: "The worst lesion of the pig falls out of the summary, which is all that most people read.",
  lookAlike:
    "A sign of the lesion that has the diagnosis, such as white skin of a pig that bled inside: call it moderate, or name its organ in the same diagnosis before the colon.",
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
    for (const { organ, path } of markedLesions(one)) {
      if (told.has(organ.id)) continue;
      told.add(organ.id);
      if (!diagnoses.some(({ organs }) => organs.includes(organ)))
        report(
          `${formatPath(path)} is marked and no diagnosis names ${organ.id}. Add one under diagnosis.morphologic.`,
          path,
        );
    }
  },
};
