import { autolysis } from "../../../knowledge/index.ts";
import { sampleAt, samplesOf } from "../../../record/index.ts";
import { isDeepInGut, lateGutSamples } from "../../../sampling/index.ts";
import { type CaseRule, verified } from "../../rule.ts";
import { isGutInQuestion } from "../../shared/asked-of-laboratory.ts";

export const gutTimeMissing: CaseRule = {
  id: "gut-time-missing",
  scope: "case",
  family: "timing",
  level: "note",
  summary: "In a pig with diarrhoea the time at which gut went into formalin is recorded.",
  protects: "Minutes decide what histology of gut is worth; without the time the pathologist must guess.",
  lookAlike:
    "Pieces that all went in together: steps.gut_fixed holds their time once for all; a piece with thickened wall is not asked about, nor is a pig that was found dead, for its minutes are gone.",
  source: verified("Animal Health Laboratory, University of Guelph, diarrhoea: minutes after death"),
  bad: {
    case: "selection: {signs: [diarrhoea]}\nsamples: [{id: 01-A, from: intestine.ileum, into: formalin, for: [histology]}, {id: 01-B, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:20}, {id: 01-C, from: intestine.spiral_colon, into: formalin, for: [histology], at: 2026-04-20T09:20}]\nopened: {at: 2026-04-20T09:15}",
  },
  good: {
    case: "selection: {signs: [diarrhoea]}\nsteps: {gut_fixed: 2026-04-20T09:20}\nopened: {at: 2026-04-20T09:15}\nsamples: [{id: 01-A, from: intestine.ileum, into: formalin, for: [histology]}, {id: 01-B, from: intestine.jejunum, into: formalin, for: [histology]}, {id: 01-C, from: intestine.spiral_colon, into: formalin, for: [histology]}]",
  },
  check(one, report) {
    if (one.record.samples === undefined || !isGutInQuestion(one)) return;
    if (one.record.death?.manner === "found-dead") return;
    // What is late by the opening alone is reported already.
    const late = lateGutSamples(one, ["reduced", "doubtful"]).map(({ index }) => index);
    for (const { sample, index } of samplesOf(one))
      if (
        !late.includes(index) &&
        sample.into === "formalin" &&
        autolysis.gut.includes(sample.from) &&
        !isDeepInGut(one, sample.from) &&
        sampleAt(one, sample) === undefined
      )
        report(
          `samples[${index}].at: the time of gut ${sample.id} is missing. Write when it went into formalin, here or once for all pieces under steps.gut_fixed.`,
          ["samples", index],
        );
  },
};
