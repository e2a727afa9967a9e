import { formatPath, isAfter } from "../../../cases/index.ts";
import { stepAt } from "../../../sampling/index.ts";
import { fluidsOf } from "../../fluids.ts";
import type { CaseRule } from "../../rule.ts";

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
    const off = stepAt(one, "head_off");
    const out = stepAt(one, "brain_out");
    for (const { path, text, at } of fluidsOf(one)) {
      if (off === undefined || !isAfter(at, off) || (out !== undefined && isAfter(at, out))) continue;
      report(
        `${formatPath(path)}: the fluid was drawn (${text}) after the head was off (${one.record.steps?.head_off}). Take it for contaminated; of the next pig draw it first.`,
        path,
      );
    }
  },
};
