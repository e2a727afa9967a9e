import { vocabulary } from "../../../generated/knowledge.ts";
import { wordIn } from "../../../notes/index.ts";
import { morphologicDiagnoses } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const diagnosisWithoutDegree: CaseRule = {
  id: "diagnosis-without-degree",
  scope: "case",
  family: "diagnosis",
  level: "note",
  summary: "A morphologic diagnosis says how bad it is, or how old.",
  protects:
    "A minimal old scar and the pneumonia that killed the pig read the same without a word on degree and age.",
  source: {
    cite: "form of the morphologic diagnosis in veterinary pathology teaching, from memory",
    confidence: "from-memory",
  },
  bad: { case: 'diagnosis: {morphologic: ["Lungs: bronchopneumonia"]}' },
  good: { case: 'diagnosis: {morphologic: ["Lungs: bronchopneumonia, cranioventral, subacute, moderate"]}' },
  check(one, report) {
    const degrees = [...vocabulary.severity, ...vocabulary.duration, "slight", "severe"];
    // One word behind the colon is a diagnosis that stops where it should begin.
    for (const { place, rest, path } of morphologicDiagnoses(one))
      if (place !== undefined && !rest.includes(",") && wordIn(rest, degrees) === undefined)
        report(
          `"${rest}" says neither how bad nor how old. Add distribution, duration and severity, such as cranioventral, subacute, moderate.`,
          path,
        );
  },
};
