import { organById } from "../../../knowledge/index.ts";
import { isSentWhole, isTissueSample, samplesOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const sampleOrganNotExamined: CaseRule = {
  id: "sample-organ-not-examined",
  scope: "case",
  family: "consistency",
  level: "warning",
  silent: "alarm",
  summary: "An organ of which tissue was taken was examined, and its state is recorded.",
  protects:
    "A result cannot be interpreted without what the organ looked like: the organism may lie in a lesion or in sound tissue.",
  lookAlike:
    "A swab, taken through nose or mouth, is passed; of a head sent whole write nervous.brain: {taken: left-in-skull, not_examined: …}.",
  source: practice("laboratory result and lesion are read together; common practice"),
  bad: {
    case: "upper_digestive: {oesophagus: {not_examined: left in the neck}}\nsamples: [{id: 01-A, from: upper_digestive.oesophagus, into: formalin, for: [histology]}]",
  },
  good: {
    case: "upper_digestive: {oesophagus: {not_examined: left in the neck}}\nsamples: [{id: 01-A, from: upper_digestive.pharynx, into: formalin, for: [histology]}]",
  },
  check(one, report) {
    for (const { sample, index } of samplesOf(one)) {
      const organ = organById(sample.from);
      if (!isTissueSample(sample) || isSentWhole(one, sample)) continue;
      if (organ !== undefined && one.organ(organ).status === "not_examined")
        report(
          `samples[${index}].from: ${sample.id} was taken from ${sample.from}, which is recorded as not examined. Write what it looked like, or correct the sample${sample.from.startsWith("nervous.") ? "; if the head was sent whole, write nervous.brain: {taken: left-in-skull, not_examined: …}" : ""}.`,
          ["samples", index, "from"],
        );
    }
  },
};
