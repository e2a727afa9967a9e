import { interpretationWords } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import { notesOfOrgans } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const interpretationInDescription: CaseRule = {
  id: "interpretation-in-description",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary: "The note of a finding says what was seen; what it means stands under diagnosis.",
  protects: "Typical of something is no description: the next reader can neither see it nor disagree.",
  source: interpretationWords.source,
  bad: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: focal, size: 8 mm, colour: dark-red, note: typical of septicaemia}]}",
  },
  good: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: focal, size: 8 mm, colour: dark-red, note: at the edge of the tail end}]}",
  },
  check(one, report) {
    const words = [...interpretationWords.interpretation, ...interpretationWords.diseases];
    for (const { text, path, name } of notesOfOrgans(one)) {
      const word = wordIn(text, words);
      if (word !== undefined)
        report(
          `${name}: "${word}" is an interpretation. Write what was seen (colour, size, consistency, edge), and the rest under diagnosis.`,
          path,
        );
    }
  },
};
