import { signFamilies } from "../../../knowledge/index.ts";
import { notExamined } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const brainUnseen: CaseRule = {
  id: "brain-unseen",
  scope: "case",
  family: "completeness",
  level: "warning",
  summary:
    "In a pig with nervous signs or sudden death the brain is looked at, whatever the reason for leaving it.",
  protects: "The disease sits where nobody looked; no other organ can answer for the brain.",
  source: {
    cite: "Schyns 2022, Vet Sci 9:341 (meningitis often invisible from outside)",
    confidence: "verified",
  },
  bad: {
    case: "selection: {signs: [convulsions]}\nnervous: {meninges: {not_examined: no saw}, brain: {not_examined: no saw}, middle_ears: normal, spinal_cord: normal}\nendocrine: {pituitary: normal}",
  },
  good: {
    case: "selection: {signs: [convulsions]}\nnervous: {brain: normal, middle_ears: normal, spinal_cord: normal}\nendocrine: {pituitary: normal}",
  },
  check(one, report) {
    const [organ] = notExamined(one, ["nervous.brain"]);
    const family = signFamilies(one.signs).find((id) => id === "nervous" || id === "sudden-death");
    if (organ === undefined || family === undefined) return;
    report(
      `nervous.brain: not examined, in a pig with ${family === "nervous" ? "nervous signs" : "sudden death"}. Open the skull, or send the whole head chilled and say so here and in the diagnosis.`,
      one.organ(organ).path,
    );
  },
};
