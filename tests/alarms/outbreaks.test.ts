/** The published outbreaks that patterns are set by: those that must alarm do, everyday disease does not. */
import { describe, expect, it } from "vitest";
import { outbreaksOf } from "./outbreaks-read.ts";

describe("published outbreaks", () => {
  it("that patterns may be set by alarm where they must, and only there", () => {
    const silent = [
      "asf-china-genotype-one-2021",
      "asf-experimental-day-45",
      "aujeszky-north-china-2011",
      "csf-kerala-2007",
      "salmonella-choleraesuis-serbia-2021",
      "svd-portugal-2007",
      "tb-india-generalised",
    ];
    expect(outbreaksOf("work", "yes").flatMap(({ name, alarmed }) => (alarmed ? [] : [name]))).toEqual(
      silent,
    );
    expect(outbreaksOf("work", "no").flatMap(({ name, alarmed }) => (alarmed ? [name] : []))).toEqual([]);
  });
});
