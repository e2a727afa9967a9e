import { formatPath, isAfter, type Moment, type Path, valueAt } from "../../../cases/index.ts";
import { isForAgents, sampleAt, samplesOf, stepAt } from "../../../sampling/index.ts";
import type { CaseRule } from "../../rule.ts";

export const meningealSwabLate: CaseRule = {
  id: "meningeal-swab-late",
  scope: "case",
  family: "timing",
  level: "error",
  summary: "The meningeal swab is taken before the brain leaves the skull.",
  protects:
    "The swab belongs into the third ventricle or the foramen magnum of a closed skull; later it finds the germs of knife and saw.",
  source: {
    cite: "common practice; a brain halved along the midline may still be swabbed on the half that is not fixed (Schyns et al. 2022, Veterinary Sciences 9:341)",
    confidence: "common-practice",
  },
  bad: {
    case: "steps: {brain_out: 2026-04-20T10:30}\nsamples: [{id: 01-A, from: nervous.meninges, into: charcoal-medium, for: [culture], at: 2026-04-20T10:35}]",
  },
  good: {
    case: "steps: {brain_out: 2026-04-20T10:30}\nsamples: [{id: 01-A, from: nervous.meninges, into: charcoal-medium, for: [culture], at: 2026-04-20T10:25}]",
  },
  check(one, report) {
    const out = stepAt(one, "brain_out");
    const late = (at: Moment | undefined): boolean =>
      at !== undefined && out !== undefined && isAfter(at, out);
    const halved = valueAt(one.record, ["nervous", "brain", "taken"]) === "halved";
    const tell = (path: Path): void =>
      report(
        `${formatPath(path)}: the meninges were swabbed after the brain was out (${one.record.steps?.brain_out}). Swab first, through the foramen magnum or into the third ventricle, then take the brain out.`,
        path,
      );
    if (late(stepAt(one, "meningeal_swab"))) tell(["steps", "meningeal_swab"]);
    if (halved) return;
    for (const { sample, index } of samplesOf(one))
      if (sample.from === "nervous.meninges" && isForAgents(sample) && late(sampleAt(one, sample)))
        tell(["samples", index, "at"]);
  },
};
