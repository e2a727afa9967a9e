import { autolysis } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { reportLate } from "../../shared/late-tests.ts";

export const pcrLate: CaseRule = {
  id: "pcr-late",
  scope: "case",
  family: "timing",
  level: "warning",
  trustsTimes: true,
  summary: "Samples for PCR are taken while nucleic acid lasts.",
  protects: "RNA goes first: a negative PCR of an old carcass does not exclude the virus.",
  source: autolysis.source,
  bad: {
    case: "death: {at: 2026-04-17T19:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: moderate-autolysis, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [pcr], at: 2026-04-20T09:50}]",
  },
  good: {
    case: "death: {at: 2026-04-19T10:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: moderate-autolysis, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [pcr], at: 2026-04-20T09:50}]",
  },
  check(one, report) {
    reportLate(one, report, "pcr");
  },
};
