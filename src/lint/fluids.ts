/** Cerebrospinal fluid of a case: the step and the samples, with their times. */
import { type Case, type Moment, moment, type Path } from "../cases/index.ts";
import { samplesOf } from "../sampling/index.ts";

interface Fluid {
  readonly path: Path;
  readonly text: string;
  readonly at: Moment;
}

export function fluidsOf(one: Case): Fluid[] {
  const written: [Path, string | undefined][] = [
    [["steps", "csf"], one.record.steps?.csf],
    ...samplesOf(one)
      .filter(({ sample }) => sample.from === "csf")
      .map(({ sample, index }): [Path, string | undefined] => [["samples", index, "at"], sample.at]),
  ];
  return written.flatMap(([path, text]) => {
    const at = moment(text);
    return at === undefined || text === undefined ? [] : [{ path, text, at }];
  });
}
