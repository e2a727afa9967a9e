import { lesionPath, morphologicDiagnoses, statesOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";

import type { CaseRule } from "../../rule.ts";

export const diagnosisWithoutLesion: CaseRule = {
  id: "diagnosis-without-lesion",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary: "A morphologic diagnosis stands on a lesion that is described.",
  protects: "A name without a description cannot be checked, scored or doubted by the next reader.",
  source: { cite: "general gross pathology teaching: describe, then name", confidence: "common-practice" },
  bad: { case: 'diagnosis: {morphologic: ["Liver: hepatitis, interstitial, multifocal, chronic, mild"]}' },
  good: {
    case: 'diagnosis: {morphologic: ["Lungs: bronchopneumonia, cranioventral, subacute, moderate"]}',
  },
  check(one, report) {
    for (const { place, organs, path } of morphologicDiagnoses(one)) {
      if (organs.length === 0) continue;
      const seen = organs.some((organ) =>
        statesOf(one, organ).some((state) => lesionPath(one, organ, state) !== undefined),
      );
      if (!seen)
        report(
          `${place}: the diagnosis names a lesion and none is described under ${listing(
            organs.slice(0, 3).map(({ id }) => id),
            "or",
          )}. Describe it there, or take the diagnosis out.`,
          path,
        );
    }
  },
};
