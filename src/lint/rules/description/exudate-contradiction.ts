import { description } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { contradictedWords } from "../../shared/contradicted-words.ts";

export const exudateContradiction: CaseRule = {
  id: "exudate-contradiction",
  scope: "case",
  family: "description",
  level: "error",
  summary: "The exudate of a lesion goes with its process.",
  protects: "An abscess without pus or an effusion of nothing sends the laboratory after the wrong cause.",
  source: description.source,
  bad: {
    case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: none}]}",
  },
  good: {
    case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: serous}]}",
  },
  check(one, report) {
    contradictedWords(one, "exudate", report);
  },
};
