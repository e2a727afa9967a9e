/** When the brain had left the skull: by its step, or by the first of its samples. */
import { type Case, isAfter, type Moment } from "../cases/index.ts";
import { isSentWhole, isTissueSample, sampleAt, samplesOf } from "../sampling/index.ts";
import { soundStepAt } from "./misdated.ts";

interface BrainOut {
  readonly at: Moment;
  /** `the brain was out (2026-04-20T10:30)`, `01-D of the brain was taken (…)`. */
  readonly told: string;
}

export function brainOut(one: Case): BrainOut | undefined {
  const step = soundStepAt(one, "brain_out");
  if (step !== undefined) return { at: step, told: `the brain was out (${one.record.steps?.brain_out})` };
  return samplesOf(one).reduce<BrainOut | undefined>((first, { sample }) => {
    const at = sampleAt(one, sample);
    const isBrain = sample.from === "nervous.brain" && isTissueSample(sample) && !isSentWhole(one, sample);
    if (!isBrain || at === undefined) return first;
    if (first !== undefined && !isAfter(first.at, at)) return first;
    return { at, told: `${sample.id} of the brain was taken (${sample.at})` };
  }, undefined);
}
