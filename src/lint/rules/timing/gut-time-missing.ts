import { autolysis } from "../../../knowledge/index.ts";
import { sampleAt, samplesOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";
import { isGutInQuestion } from "../../shared/asked-of-laboratory.ts";
import { lateGut } from "../../shared/late-tests.ts";

export const gutTimeMissing: CaseRule = {
  id: "gut-time-missing",
  scope: "case",
  family: "timing",
  level: "note",
  summary: "In a pig with diarrhoea the time is written down when gut went into formalin.",
  protects: "Minutes decide what histology of gut is worth; without the time the pathologist must guess.",
  source: {
    cite: "Animal Health Laboratory, University of Guelph, diarrhoea: minutes after death",
    confidence: "verified",
  },
  bad: {
    case: "selection: {signs: [diarrhoea]}\nsamples: [{id: 01-A, from: intestine.ileum, into: formalin, for: [histology]}, {id: 01-B, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:20}, {id: 01-C, from: intestine.spiral_colon, into: formalin, for: [histology], at: 2026-04-20T09:20}]\nopened: {at: 2026-04-20T09:15}",
  },
  good: {
    case: "selection: {signs: [diarrhoea]}\nsteps: {gut_fixed: 2026-04-20T09:20}\nopened: {at: 2026-04-20T09:15}\nsamples: [{id: 01-A, from: intestine.ileum, into: formalin, for: [histology]}, {id: 01-B, from: intestine.jejunum, into: formalin, for: [histology]}, {id: 01-C, from: intestine.spiral_colon, into: formalin, for: [histology]}]",
  },
  check(one, report) {
    if (!isGutInQuestion(one)) return;
    // What is late by the opening alone is told already.
    const late = lateGut(one, ["reduced", "doubtful"]).map(({ index }) => index);
    for (const { sample, index } of samplesOf(one))
      if (
        !late.includes(index) &&
        sample.into === "formalin" &&
        autolysis.gut.includes(sample.from) &&
        sampleAt(one, sample) === undefined
      )
        report(
          `samples[${index}].at is missing for gut ${sample.id}. Write when it went into formalin, here or once for all under steps.gut_fixed.`,
          ["samples", index],
        );
  },
};
