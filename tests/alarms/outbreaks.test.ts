/** The published outbreaks that patterns are set by: those that must alarm do, everyday disease does not. */
import { describe, expect, it } from "vitest";
import { mustAlarm, outbreaksOf } from "./outbreaks-read.ts";

describe("published outbreaks", () => {
  it("that patterns may be set by alarm where they must, and only there", () => {
    const silent: string[] = [];
    // Beyond the letter of the rows, on purpose: one hot pig with red skin was classical swine fever, a swollen neck told in a note is no
    // reason to cut, and of the others each looks like a swine fever (README of the fixtures).
    const loud = [
      "carcass-bleeding-diathesis-catalonia",
      "coughing-fatteners-ille-et-vilaine-2006",
      "csf-wuwei-2013",
      "head-tilt-piglets-giessen",
      "oedema-disease-litters-china",
    ];
    const work = outbreaksOf("work");
    expect(work.flatMap((one) => (mustAlarm(one) && !one.alarmed ? [one.name] : []))).toEqual(silent);
    expect(work.flatMap((one) => (!mustAlarm(one) && one.alarmed ? [one.name] : []))).toEqual(loud);
  });
});
