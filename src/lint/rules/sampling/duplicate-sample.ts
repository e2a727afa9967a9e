import { samplesOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const duplicateSample: CaseRule = {
  id: "duplicate-sample",
  scope: "case",
  family: "sampling",
  level: "error",
  summary: "No sample number is used twice in a case.",
  protects: "Two pots with one number get one result, and nobody knows which organ it belongs to.",
  lookAlike:
    "One pot with several pieces of one pig: it is one sample with one number; name the pieces under site.",
  source: practice("one number for one container; common practice"),
  bad: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [pcr]}, {id: 01-A, from: lymphoid.tonsil, into: chilled, for: [pcr]}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [pcr]}, {id: 01-B, from: lymphoid.tonsil, into: chilled, for: [pcr]}]",
  },
  check(one, report) {
    if ((one.record.samples?.length ?? 0) < 2) return;
    const first = new Map<string, number>();
    for (const { sample, index } of samplesOf(one)) {
      const earlier = first.get(sample.id);
      if (earlier === undefined) first.set(sample.id, index);
      else
        report(
          `samples[${index}].id: ${sample.id} is already the number of samples[${earlier}]. Check the labels and give each sample its own.`,
          ["samples", index, "id"],
        );
    }
  },
};
