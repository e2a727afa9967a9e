import { formatPath, isAfter, type Moment, type Path, valueAt } from "../../../cases/index.ts";
import {
  brainOut,
  doubtfulSamples,
  isForAgents,
  sampleAt,
  samplesOf,
  soundStepAt,
} from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const meningealSwabLate: CaseRule = {
  id: "meningeal-swab-late",
  scope: "case",
  family: "timing",
  level: "error",
  summary: "The meningeal swab is taken before the brain is removed.",
  protects:
    "The swab belongs in the third ventricle or the foramen magnum of a closed skull; later it finds the bacteria of knife and saw.",
  lookAlike:
    "A brain halved on a clean table, and its fresh half swabbed: write nervous.brain: {taken: halved}, and the swab is passed.",
  source: practice(
    "common practice; a brain halved along the midline may still be swabbed on the half that is not fixed (Schyns et al. 2022, Veterinary Sciences 9:341)",
  ),
  bad: {
    case: "steps: {brain_out: 2026-04-20T10:30}\nsamples: [{id: 01-A, from: nervous.meninges, into: charcoal-medium, for: [culture], at: 2026-04-20T10:35}]",
  },
  good: {
    case: "steps: {brain_out: 2026-04-20T10:30}\nsamples: [{id: 01-A, from: nervous.meninges, into: charcoal-medium, for: [culture], at: 2026-04-20T10:25}]",
  },
  check(one, report) {
    const { samples, steps } = one.record;
    if (steps?.meningeal_swab === undefined && !samples?.some(({ from }) => from === "nervous.meninges"))
      return;
    const out = brainOut(one);
    if (out === undefined || valueAt(one.record, ["nervous", "brain", "taken"]) === "halved") return;
    const isLate = (at: Moment | undefined): boolean => at !== undefined && isAfter(at, out.at);
    const swab = samplesOf(one).find(
      ({ sample, index }) =>
        sample.from === "nervous.meninges" &&
        isForAgents(sample) &&
        isLate(sampleAt(one, sample)) &&
        !doubtfulSamples(one).includes(index),
    );
    const step = isLate(soundStepAt(one, "meningeal_swab"));
    if (swab === undefined && !step) return;
    const path: Path = swab === undefined ? ["steps", "meningeal_swab"] : ["samples", swab.index, "at"];
    report(
      `${formatPath(path)}: the meninges were swabbed after ${out.told}. Swab first, through the foramen magnum or into the third ventricle, then take the brain out; if the brain was halved and its fresh half was swabbed, write nervous.brain: {taken: halved}.`,
      path,
    );
  },
};
