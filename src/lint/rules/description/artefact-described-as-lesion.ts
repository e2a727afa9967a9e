import { formatPath } from "../../../cases/index.ts";
import { findingsOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

/** What only a lesion of the living pig has. */
const fields = ["duration", "exudate", "severity"] as const;

export const artefactDescribedAsLesion: CaseRule = {
  id: "artefact-described-as-lesion",
  scope: "case",
  family: "description",
  level: "error",
  summary: "What is called an artefact is not graded, dated or given an exudate.",
  protects: "A graded artefact is counted and diagnosed as disease by the next reader.",
  lookAlike:
    "A lesion that may be an artefact: certainty: probable keeps its severity and duration. Autolysis may have a severity, which says how rotten it was.",
  source: practice("common practice of describing gross lesions: an artefact is named, not graded"),
  bad: {
    case: "lymphoid: {spleen: [{process: discolouration, distribution: focal, size: 20 mm, colour: green, certainty: artefact, severity: marked}]}",
  },
  good: {
    case: "lymphoid: {spleen: [{process: discolouration, distribution: focal, size: 20 mm, colour: green, certainty: artefact, note: bile}]}",
  },
  check(one, report) {
    for (const { finding, path } of findingsOf(one)) {
      if (
        finding.process !== "artefact" &&
        finding.process !== "autolysis" &&
        finding.certainty !== "artefact"
      )
        continue;
      const key = fields.find((name) => {
        const word = finding[name];
        if (name === "severity" && finding.process === "autolysis") return false;
        return word !== undefined && word !== "none";
      });
      if (key !== undefined)
        report(
          `${formatPath([...path, key])}: an artefact has no ${key}. Take ${key} out or, if this is a lesion, write certainty: probable.`,
          [...path, key],
        );
    }
  },
};
