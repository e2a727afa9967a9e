import { description } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { contradictedWords } from "../../shared/contradicted-words.ts";

export const consistencyContradiction: CaseRule = {
  id: "consistency-contradiction",
  scope: "case",
  family: "description",
  level: "error",
  summary: "The consistency of a lesion goes with its process.",
  protects: "Soft dark lung is not pneumonia; called consolidation it spoils every lung score of the herd.",
  source: description.source,
  bad: {
    case: "respiratory: {lungs: {findings: [{process: consolidation, distribution: cranioventral, extent: 14 %, colour: dark-red, consistency: soft}]}}",
  },
  good: {
    case: "respiratory: {lungs: {findings: [{process: consolidation, distribution: cranioventral, extent: 14 %, colour: dark-red, consistency: firm}]}}",
  },
  check(one, report) {
    contradictedWords(one, "consistency", report);
  },
};
