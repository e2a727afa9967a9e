/** The published outbreaks that patterns are set by: those that must alarm do, everyday disease does not. */
import { describe, expect, it } from "vitest";
import { mustAlarm, outbreaksOf } from "./outbreaks-read.ts";

describe("published outbreaks", () => {
  it("that patterns may be set by alarm where they must, and only there", () => {
    const silent: string[] = [];
    const loud: string[] = [];
    const work = outbreaksOf("work");
    expect(work.flatMap((one) => (mustAlarm(one) && !one.alarmed ? [one.name] : []))).toEqual(silent);
    expect(work.flatMap((one) => (!mustAlarm(one) && one.alarmed ? [one.name] : []))).toEqual(loud);
  });
});
