import { isUnborn } from "../../../cases/index.ts";
import { organById } from "../../../knowledge/index.ts";
import { forbids, samplesOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const sampleOrganAbsent: CaseRule = {
  id: "sample-organ-absent",
  scope: "case",
  family: "sampling",
  level: "error",
  summary: "A sample comes from an organ that this pig has.",
  protects: "A uterus from a castrate is a sample from another pig: the label or the file is wrong.",
  lookAlike:
    "The placenta of a piglet that lived an hour is passed. What lay where the organ should have been, after surgery or a bite, is a sample of the place, such as serosa.peritoneum.",
  source: practice("age class and sex decide which organs exist; common practice"),
  bad: { case: "samples: [{id: 01-A, from: placental.placenta, into: chilled, for: [pcr]}]" },
  good: {
    case: "samples: [{id: 01-A, from: lymphoid.thymus, into: chilled, for: [pcr]}]",
  },
  check(one, report) {
    if (one.record.samples === undefined) return;
    for (const { sample, index } of samplesOf(one)) {
      const organ = organById(sample.from);
      if (organ === undefined) continue;
      const own = one.record.pig?.sex;
      const { exists } = organ.definition;
      const isUnformed =
        one.ageClass !== undefined && isUnborn(one.ageClass) && exists?.includes(one.ageClass) === false;
      const state = one.organ(organ);
      if (isUnformed || forbids(one, organ) !== undefined || state.because === "absent")
        report(
          `samples[${index}].from: ${sample.id} is from ${sample.from}, which this pig (${[one.ageClass, own].filter(Boolean).join(", ")}) does not have${state.because === "absent" ? " according to its own record" : ""}. Correct the organ, or find out whose sample it is.`,
          ["samples", index, "from"],
        );
    }
  },
};
