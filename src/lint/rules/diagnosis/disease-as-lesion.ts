import { interpretationWords } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import { isCalledProgressive, morphologicDiagnoses } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const diseaseAsLesion: CaseRule = {
  id: "disease-as-lesion",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary: "A morphologic diagnosis names the lesion, not the disease or its agent.",
  protects:
    "The eye sees a bronchopneumonia; the agent is a guess that hides the other guesses, and in a table it looks proven.",
  source: interpretationWords.source,
  bad: { case: 'diagnosis: {morphologic: ["Lungs: enzootic pneumonia, moderate"]}' },
  good: {
    case: 'diagnosis: {morphologic: ["Lungs: bronchopneumonia, cranioventral, subacute, moderate"], differentials: [enzootic pneumonia, influenza]}',
  },
  check(one, report) {
    for (const { text, path } of morphologicDiagnoses(one)) {
      const word = wordIn(text, interpretationWords.diseases);
      if (word !== undefined && !isCalledProgressive(text))
        report(
          `"${word}" is a disease or an agent. Name the lesion here, and write ${word} under differentials, or under aetiologic once the laboratory has shown it.`,
          path,
        );
    }
  },
};
