/** Names of scales as people half remember them. */
import { describe, expect, it, test } from "vitest";
import { scales } from "../../src/knowledge/scales.ts";
import { scoreCases, unknownScale } from "../../src/score/index.ts";

const known = [...scales.keys()];

test.each([
  [
    "madec",
    "Did you mean madec-kobisch-1982, madec-kobisch-1982-pleurisy, madec-kobisch-1982-six-lobes or madec-leneveu-2011?",
  ],
  ["leneveu", "Did you mean madec-leneveu-2011?"],
  ["Kobisch 1982 six", "Did you mean madec-kobisch-1982-six-lobes?"],
  ["MAFF", "Did you mean maff-1978?"],
  ["maff-1987", "Did you mean maff-1978?"],
  ["goodwn", "Did you mean goodwin-1971?"],
  ["pericarditis", "Did you mean pericarditis-three-classes?"],
  ["zzzzzz", `None of the ${known.length} names is near`],
  ["", `None of the ${known.length} names is near`],
])("%j: %s", (written, said) => {
  expect(unknownScale(written, known)).toContain(`there is no scale "${written}". ${said}`);
});

describe("scoring", () => {
  it("by an unknown name says so", () => {
    expect(() => scoreCases([], { scales: ["madec"] })).toThrow(/madec-leneveu-2011\?$/);
  });
});
