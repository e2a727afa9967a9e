import { wordIn } from "../../../notes/index.ts";
import { findingsOf, isLesion, morphologicDiagnoses } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

const slight = ["minimal", "mild", "slight"];
const marked = ["marked", "severe"];

export const diagnosisAgainstSeverity: CaseRule = {
  id: "diagnosis-against-severity",
  scope: "case",
  family: "diagnosis",
  silent: "never",
  level: "warning",
  summary: "A diagnosis is as severe as the lesion that it names.",
  protects: "The table takes the one, and the report to the farmer the other.",
  source: practice("common practice of reporting"),
  bad: {
    case: 'liver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, severity: marked}]}\nsamples: \ndiagnosis: {morphologic: ["Liver: necrosis, multifocal, acute, mild"]}',
  },
  good: {
    case: 'liver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, severity: marked}]}\nsamples: \ndiagnosis: {morphologic: ["Liver: necrosis, multifocal, acute, marked"]}',
  },
  check(one, report) {
    if (one.record.diagnosis?.morphologic === undefined) return;
    const diagnoses = morphologicDiagnoses(one);
    for (const { organs, rest, path } of diagnoses) {
      const [organ] = organs;
      // Two diagnoses of one organ may each have a lesion of their own.
      if (organ === undefined || organs.length > 1) continue;
      if (diagnoses.filter((other) => other.organs.includes(organ)).length > 1) continue;
      const isSlight = wordIn(rest, slight) !== undefined;
      const isMarked = wordIn(rest, marked) !== undefined;
      if (isSlight === isMarked) continue;
      const severities = findingsOf(one)
        .filter((entry) => entry.organ === organ && isLesion(entry.finding))
        .map(({ finding }) => finding.severity)
        .filter((severity) => severity !== undefined);
      if (severities.length === 0) continue;
      const against = isSlight
        ? severities.every((severity) => severity === "marked")
        : severities.every((severity) => slight.includes(severity));
      if (against)
        report(
          `"${rest}" is ${isSlight ? "mild" : "marked"}, but the finding under ${organ.id} is ${severities[0]}. Correct one of them.`,
          path,
        );
    }
  },
};
