import { morphologicDiagnoses } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const diagnosisWithoutOrgan: CaseRule = {
  id: "diagnosis-without-organ",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary: "A morphologic diagnosis begins with its organ and a colon.",
  protects:
    "Organ: process, exudate, distribution, duration, severity can be searched and counted; a free sentence cannot.",
  source: {
    cite: "form of the morphologic diagnosis in veterinary pathology teaching, from memory",
    confidence: "from-memory",
  },
  bad: { case: "diagnosis: {morphologic: [bronchopneumonia]}" },
  good: {
    case: 'diagnosis: {morphologic: ["Lungs: bronchopneumonia, cranioventral, subacute, moderate"]}',
  },
  check(one, report) {
    for (const { place, text, path } of morphologicDiagnoses(one))
      if (place === undefined || place === "")
        report(
          `"${text}" names no organ. Write Organ: process, exudate, distribution, duration, severity, such as "Lungs: bronchopneumonia, suppurative, cranioventral, subacute, moderate".`,
          path,
        );
  },
};
