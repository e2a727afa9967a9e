import { isContaminated, isFixed, isFor } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";
import { afterGutOpened, isSterileInside, reportAfterGut } from "../../shared/gut-opened-first.ts";

export const cultureAfterGutOpened: CaseRule = {
  id: "culture-after-gut-opened",
  scope: "case",
  family: "timing",
  level: "warning",
  summary: "Culture samples of other organs are taken before the gut is opened.",
  protects: "Germs of the gut on knife and gloves grow over what was in the organ.",
  source: {
    cite: "standard pathology texts (from memory): contamination rises with each cut",
    confidence: "from-memory",
  },
  bad: {
    case: "steps: {gut_opened: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [culture], at: 2026-04-20T10:20}]",
  },
  good: {
    case: "steps: {gut_opened: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [culture], at: 2026-04-20T09:50}, {id: 01-B, from: intestine.ileum, into: chilled, for: [culture], at: 2026-04-20T10:20}]",
  },
  check(one, report) {
    // What lies in formalin grows nothing, sterile or not; culture-in-formalin says so.
    const late = afterGutOpened(
      one,
      (sample) =>
        isFor(sample, "culture") &&
        !isFixed(sample) &&
        isSterileInside(sample) &&
        !isContaminated(sample.from),
    );
    reportAfterGut(one, late, report, {
      what: " for culture",
      advice: late.every(({ sample }) => sample.from === "blood")
        ? "Note the contamination; of the next pig draw blood before the gut is opened."
        : "Sear the surface and swab the depth of a piece that was not cut, or note the contamination; next time open the gut last.",
    });
  },
};
