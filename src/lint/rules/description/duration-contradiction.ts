import { description } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { contradictedWords } from "../../shared/contradicted-words.ts";

export const durationContradiction: CaseRule = {
  id: "duration-contradiction",
  scope: "case",
  family: "description",
  level: "error",
  summary: "The duration of a lesion is long enough for its process.",
  protects: "A scar of this morning dates the disease wrongly, and with it the group to be sampled.",
  source: description.source,
  bad: {
    case: "respiratory: {lungs: {findings: [{process: scar, distribution: focal, size: 12 mm, duration: peracute}]}}",
  },
  good: {
    case: "respiratory: {lungs: {findings: [{process: scar, distribution: focal, size: 12 mm, duration: chronic}]}}",
  },
  check(one, report) {
    contradictedWords(one, "duration", report);
  },
};
