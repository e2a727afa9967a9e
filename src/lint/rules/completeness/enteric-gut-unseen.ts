import { signFamilies } from "../../../knowledge/index.ts";
import { notExamined } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

const segments = ["intestine.jejunum", "intestine.ileum", "intestine.caecum", "intestine.spiral_colon"];

export const entericGutUnseen: CaseRule = {
  id: "enteric-gut-unseen",
  scope: "case",
  family: "completeness",
  level: "warning",
  summary: "In a pig with enteric signs jejunum, ileum, caecum and spiral colon are each looked at.",
  protects: "Each cause of diarrhoea has its own piece of gut; the piece left out is the one that had it.",
  source: {
    cite: "Animal Health Laboratory, University of Guelph: gut segments to examine and sample in diarrhoea",
    confidence: "verified",
  },
  bad: {
    case: "selection: {signs: [diarrhoea]}\nintestine: {spiral_colon: {not_examined: ran out of time}}",
  },
  good: { case: "selection: {signs: [diarrhoea]}\nintestine: {spiral_colon: normal}" },
  check(one, report) {
    if (!signFamilies(one.signs).includes("enteric")) return;
    for (const organ of notExamined(one, segments))
      report(
        `${organ.id}: not examined, in a pig with enteric signs. Open it and look at content, wall and mucosa; if it is gone, say in the diagnosis what that leaves open.`,
        one.organ(organ).path,
      );
  },
};
