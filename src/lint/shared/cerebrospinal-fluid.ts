/** Cerebrospinal fluid of a case: the samples and the step, with their times. */
import { type Case, formatPath, type Moment, moment, type Path } from "../../cases/index.ts";
import { misdatedSamples, samplesOf, soundStepAt } from "../../record/index.ts";

import type { Report } from "../rule.ts";

interface Fluid {
  readonly path: Path;
  readonly text: string;
  readonly at: Moment;
}

export function fluidsOf(one: Case): Fluid[] {
  const misdated = misdatedSamples(one);
  const written: [Path, string | undefined][] = [
    ...samplesOf(one)
      .filter(({ sample, index }) => sample.from === "csf" && !misdated.includes(index))
      .map(({ sample, index }): [Path, string | undefined] => [["samples", index, "at"], sample.at]),
    [["steps", "csf"], soundStepAt(one, "csf") === undefined ? undefined : one.record.steps?.csf],
  ];
  return written.flatMap(([path, text]) => {
    const at = moment(text);
    return at === undefined || text === undefined ? [] : [{ path, text, at }];
  });
}

/** Several tubes, or the step and its tube, were drawn in one go: one line for those that came too late. */
export function reportFluid(late: readonly Fluid[], after: string, advice: string, report: Report): void {
  const [first] = late;
  if (first !== undefined)
    report(
      `${formatPath(first.path)}: the fluid was drawn (${first.text}) after ${after}. ${advice}`,
      first.path,
    );
}
