/** The published outbreaks that patterns are set by: those that must alarm do, everyday disease does not. */
import { describe, expect, it } from "vitest";
import { outbreaksOf } from "./outbreaks-read.ts";

describe("published outbreaks", () => {
  it("that patterns may be set by alarm where they must, and only there", () => {
    const silent = [
      // Its nervous signs stand in the history: fever, cough and scour are left, and come every day.
      "aujeszky-north-china-2011",
      // It tells of lesions of the coronary bands and not of what kind: only the look for signs can hold that.
      "svd-portugal-2007",
    ];
    expect(outbreaksOf("work", "yes").flatMap(({ name, alarmed }) => (alarmed ? [] : [name]))).toEqual(
      silent,
    );
    expect(outbreaksOf("work", "no").flatMap(({ name, alarmed }) => (alarmed ? [name] : []))).toEqual([]);
  });
});
