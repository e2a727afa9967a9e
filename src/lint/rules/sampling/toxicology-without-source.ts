import { isFor, isTissue, materialTitle, samplesOf } from "../../../record/index.ts";
import { fromMemory, type VisitRule } from "../../rule.ts";

const sources = new Set(["stomach.stomach_content", "stomach", "feed", "water", "bedding"]);

export const toxicologyWithoutSource: VisitRule = {
  id: "toxicology-without-source",
  scope: "visit",
  family: "sampling",
  level: "note",
  silent: "authority",
  summary: "Where tissue goes for toxicology, stomach content, feed or water from the visit goes too.",
  protects: "A poison is proved at its source; a value in the liver alone starts an argument.",
  lookAlike:
    "A lack, such as of selenium, needs no source: accept the note with that reason; feed or water of another pig of the visit counts for all.",
  source: fromMemory("from memory: general kit of liver, kidney, stomach content, urine, feed and water"),
  bad: {
    case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], amount: 60 g}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], amount: 60 g}, {id: 01-B, from: stomach.stomach_content, into: frozen, for: [toxicology], amount: 600 g}]",
  },
  check(visit, _reportVisit, reportCase) {
    if (!visit.complete) return;
    const all = visit.cases.flatMap((one) => samplesOf(one).map((entry) => ({ one, ...entry })));
    const asked = all.filter(({ sample }) => isFor(sample, "toxicology"));
    const [first] = asked.filter(({ sample }) => isTissue(sample.from));
    if (first === undefined || all.some(({ sample }) => sources.has(sample.from))) return;
    reportCase(first.one)(
      `samples[${first.index}].for: toxicology is asked of ${materialTitle(first.sample.from)}, but no stomach content, feed or water was taken at this visit. Take 1 kg of feed from the trough, 1 l of water and stomach content, and keep them frozen.`,
      ["samples", first.index, "for"],
    );
  },
};
