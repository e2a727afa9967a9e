import { isAfter } from "../../../cases/index.ts";
import { brainOut } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";
import { fluidsOf, reportFluid } from "../../shared/cerebrospinal-fluid.ts";

export const csfAfterBrainOut: CaseRule = {
  id: "csf-after-brain-out",
  scope: "case",
  family: "timing",
  level: "error",
  summary: "Cerebrospinal fluid is drawn before the brain leaves the skull.",
  protects:
    "Once the skull is open the fluid is blood and saw water; meningitis can then not be shown from it.",
  source: {
    cite: "from memory; CSF as preferred sample: Iowa State University Veterinary Diagnostic Laboratory",
    confidence: "from-memory",
  },
  bad: {
    case: "steps: {brain_out: 2026-04-20T10:30}\nsamples: [{id: 01-A, from: csf, into: plain-tube, for: [culture], at: 2026-04-20T10:40}]\n",
  },
  good: {
    case: "steps: {brain_out: 2026-04-20T10:30}\nsamples: [{id: 01-A, from: csf, into: plain-tube, for: [culture], at: 2026-04-20T09:50}]\n",
  },
  check(one, report) {
    const out = brainOut(one);
    if (out !== undefined)
      reportFluid(
        fluidsOf(one).filter(({ at }) => isAfter(at, out.at)),
        out.told,
        "Do not send it as cerebrospinal fluid; of the next pig draw it first, with a sterile needle behind the head.",
        report,
      );
  },
};
