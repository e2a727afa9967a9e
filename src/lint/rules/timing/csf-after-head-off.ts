import { isAfter } from "../../../cases/index.ts";
import { brainOut, soundStepAt } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";
import { fluidsOf, reportFluid } from "../../shared/cerebrospinal-fluid.ts";

export const csfAfterHeadOff: CaseRule = {
  id: "csf-after-head-off",
  scope: "case",
  family: "timing",
  level: "error",
  summary: "Cerebrospinal fluid is drawn before the head is taken off.",
  protects: "With the cut through the neck the fluid runs out, and what is left is contaminated.",
  source: { cite: "from memory", confidence: "from-memory" },
  bad: {
    case: "steps: {head_off: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: csf, into: plain-tube, for: [culture], at: 2026-04-20T10:10}]\n",
  },
  good: {
    case: "steps: {head_off: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: csf, into: plain-tube, for: [culture], at: 2026-04-20T09:50}]\n",
  },
  check(one, report) {
    const off = soundStepAt(one, "head_off");
    const out = brainOut(one)?.at;
    if (off === undefined) return;
    const fluids = fluidsOf(one);
    // Then csf-after-brain-out says the worse of the two.
    if (out !== undefined && fluids.some(({ at }) => isAfter(at, out))) return;
    reportFluid(
      fluids.filter(({ at }) => isAfter(at, off)),
      `the head was off (${one.record.steps?.head_off})`,
      "Take it for contaminated; of the next pig draw it first.",
      report,
    );
  },
};
