import { description } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { contradictedWords } from "../../shared/contradicted-words.ts";

export const colourContradiction: CaseRule = {
  id: "colour-contradiction",
  scope: "case",
  family: "description",
  level: "error",
  summary: "The colour of a lesion goes with its process.",
  protects: "Icterus that is red or congestion that is unchanged is a slip in one of the two words.",
  source: description.source,
  bad: {
    case: "liver_pancreas: {liver: [{process: congestion, distribution: diffuse, extent: 90 %, colour: unchanged}]}",
  },
  good: {
    case: "liver_pancreas: {liver: [{process: congestion, distribution: diffuse, extent: 90 %, colour: dark-red}]}",
  },
  check(one, report) {
    contradictedWords(one, "colour", report);
  },
};
