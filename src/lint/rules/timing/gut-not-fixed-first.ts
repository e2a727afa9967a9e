import { isAfter } from "../../../cases/index.ts";
import { autolysis } from "../../../knowledge/index.ts";
import { type IndexedSample, isFixed, sampleAt, samplesOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, verified } from "../../rule.ts";
import { isGutInQuestion } from "../../shared/asked-of-laboratory.ts";

export const gutNotFixedFirst: CaseRule = {
  id: "gut-not-fixed-first",
  scope: "case",
  family: "timing",
  level: "note",
  summary: "In a pig with diarrhoea gut goes into formalin before the other organs.",
  protects: "Liver and lung can wait an hour for formalin; gut cannot wait ten minutes.",
  lookAlike:
    "One pot that was closed at the end, with one time for all: give the gut its own time under steps.gut_fixed, and the order shows.",
  source: verified("Animal Health Laboratory, University of Guelph, diarrhoea: minutes count"),
  bad: {
    case: "selection: {signs: [diarrhoea]}\ndeath: {at: 2026-04-20T09:33}\nopened: {at: 2026-04-20T09:35}\nsamples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-B, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-C, from: intestine.spiral_colon, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-D, from: liver_pancreas.liver, into: formalin, for: [histology], at: 2026-04-20T09:38}]",
  },
  good: {
    case: "selection: {signs: [diarrhoea]}\ndeath: {at: 2026-04-20T09:33}\nopened: {at: 2026-04-20T09:35}\nsamples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-B, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-C, from: intestine.spiral_colon, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-D, from: liver_pancreas.liver, into: formalin, for: [histology], at: 2026-04-20T09:55}]",
  },
  check(one, report) {
    if (one.record.samples === undefined || !isGutInQuestion(one)) return;
    const fixed = samplesOf(one).filter(({ sample }) => isFixed(sample));
    const isMucosa = ({ sample }: IndexedSample): boolean => autolysis.gut.includes(sample.from);
    const times = fixed
      .filter(isMucosa)
      .map(({ sample }) => sampleAt(one, sample))
      .filter((at) => at !== undefined);
    const [first] = times.sort((a, b) => a.written - b.written);
    if (first === undefined) return;
    const earlier = fixed.filter((entry) => {
      const at = sampleAt(one, entry.sample);
      return !isMucosa(entry) && at !== undefined && isAfter(first, at);
    });
    const [early] = earlier;
    if (early !== undefined)
      report(
        `samples[${early.index}].at: ${listing(earlier.map(({ sample }) => sample.id))} went into formalin before any gut did, and the pig had diarrhoea. Fix gut first; the other organs can wait.`,
        ["samples", early.index, "at"],
      );
  },
};
