import { interpretationWords } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import { notesOfOrgans } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const simileInDescription: CaseRule = {
  id: "simile-in-description",
  scope: "case",
  family: "diagnosis",
  level: "note",
  summary: "A description uses plain colours and measures, no food or fruit.",
  protects: "Two readers never think of the same strawberry, and the laboratory may not eat nutmeg.",
  source: interpretationWords.source,
  bad: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: focal, size: 8 mm, colour: dark-red, note: like raspberry jam}]}",
  },
  good: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: focal, size: 8 mm, colour: dark-red, note: raised 2 mm}]}",
  },
  check(one, report) {
    for (const { text, path, name } of notesOfOrgans(one)) {
      // Food in the stomach is food.
      if (name.startsWith("stomach.stomach_content")) continue;
      const word = wordIn(text, interpretationWords.similes);
      if (word !== undefined)
        report(
          `${name}: "${word}" is in the kitchen. Write the colour, size or consistency in plain words.`,
          path,
        );
    }
  },
};
