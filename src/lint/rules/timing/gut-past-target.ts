import { quantity } from "../../../cases/index.ts";
import { autolysis } from "../../../knowledge/index.ts";
import { sampleAt, spell } from "../../../record/index.ts";
import { lateGutSamples } from "../../../sampling/index.ts";
import { type CaseRule, verified } from "../../rule.ts";
import { isGutInQuestion } from "../../shared/asked-of-laboratory.ts";

const target = quantity("duration", autolysis.gut_target) ?? 0;

export const gutPastTarget: CaseRule = {
  id: "gut-past-target",
  scope: "case",
  family: "timing",
  level: "note",
  trustsTimes: true,
  summary: "In a pig with diarrhoea gut is in formalin within ten minutes of death.",
  protects: "Within ten minutes the villus tips are still whole, and they tell one diarrhoea from another.",
  lookAlike:
    "Thickened gut with lesions in its deep wall is no matter of minutes: describe process: thickening, or the exudate as proliferative, and it is passed.",
  source: verified(
    "Animal Health Laboratory, University of Guelph, diarrhoea: best under 10 minutes after death",
  ),
  bad: {
    case: "selection: {signs: [diarrhoea]}\ndeath: {at: 2026-04-20T09:25}\nsamples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-B, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:34}, {id: 01-C, from: intestine.spiral_colon, into: formalin, for: [histology], at: 2026-04-20T09:34}]\nopened: {at: 2026-04-20T09:30}",
  },
  good: {
    case: "selection: {signs: [diarrhoea]}\ndeath: {at: 2026-04-20T09:33}\nopened: {at: 2026-04-20T09:37}\nsamples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:41}, {id: 01-B, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-C, from: intestine.spiral_colon, into: formalin, for: [histology], at: 2026-04-20T09:42}]",
  },
  check(one, report) {
    if (!isGutInQuestion(one)) return;
    for (const { sample, index, late } of lateGutSamples(one, ["good"])) {
      const hours = late[0]?.hours ?? 0;
      // Without a time of its own gut-time-missing asks for it first.
      if (hours > target && sampleAt(one, sample) !== undefined)
        report(
          `samples[${index}].at: gut ${sample.id} was fixed ${spell(hours)} after death. It can be read, but in diarrhoea aim for ${autolysis.gut_target}: have pots and scissors ready, open the belly, cut the pieces, then carry on.`,
          ["samples", index, "at"],
        );
    }
  },
};
