import { isFor, isForAgents, isGut, isTissue } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";
import { afterGutOpened, reportAfterGut } from "../../shared/gut-opened-first.ts";

export const gutOpenedEarly: CaseRule = {
  id: "gut-opened-early",
  scope: "case",
  family: "timing",
  level: "note",
  summary: "The gut is opened after the fresh samples of the other organs are taken.",
  protects:
    "Content of the gut carries nucleic acid of whatever the pig swallowed, and PCR finds it on the next organ.",
  source: {
    cite: "opening the lumen comes last: standard pathology texts (from memory)",
    confidence: "from-memory",
  },
  bad: {
    case: "steps: {gut_opened: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [pcr], at: 2026-04-20T10:20}]",
  },
  good: {
    case: "steps: {gut_opened: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], at: 2026-04-20T10:20}]",
  },
  check(one, report) {
    const late = afterGutOpened(
      one,
      (sample) =>
        isForAgents(sample) && !isFor(sample, "culture") && isTissue(sample.from) && !isGut(sample.from),
    );
    reportAfterGut(one, late, report, {
      what: "",
      advice: "Change gloves and knife before fresh samples; next time open the gut last.",
    });
  },
};
