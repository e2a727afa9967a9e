import { sampleRules } from "../../../knowledge/index.ts";
import { isFor, materialTitle, samplesOf } from "../../../record/index.ts";
import { amountOf } from "../../../sampling/index.ts";
import type { CaseRule } from "../../rule.ts";

export const toxicologyAmountSmall: CaseRule = {
  id: "toxicology-amount-small",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "A sample for toxicology is large enough for the measurement.",
  protects: 'The laboratory measures what is there or nothing: a shaving of liver ends as "insufficient".',
  source: {
    cite: "Oregon State Veterinary Diagnostic Laboratory: liver 20 g for selenium; other amounts from memory",
    confidence: "verified",
  },
  bad: {
    case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], amount: 8 g}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], amount: 40 g}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
  },
  check(one, report) {
    for (const { sample, index } of samplesOf(one)) {
      const needed = sampleRules.toxicology_amounts[sample.from];
      const [amount, least] = [amountOf(sample.amount), amountOf(needed?.amount)];
      if (isFor(sample, "toxicology") && amount !== undefined && least !== undefined && amount < least)
        report(
          `samples[${index}].amount: ${sample.amount} of ${materialTitle(sample.from)} is too little for toxicology; ${needed?.for} needs ${needed?.amount}. Take more, or ask the laboratory what it can do with less.`,
          ["samples", index, "amount"],
        );
    }
  },
};
