/** What published outbreaks say of a record, worked out by hand from a few invented ones. */
import { describe, expect, it } from "vitest";
import { likenessOf, tallied } from "../../src/workup/index.ts";

const outbreak = (diseases: [string, ...string[]], signs: string[], lungs: [string, ...string[]]) => ({
  outbreak: diseases.join("-"),
  cite: "invented",
  diseases,
  signs,
  lesions: { "respiratory.lungs": lungs },
});

describe("of ten outbreaks, four of them of one disease", () => {
  const ten = [
    ...Array.from({ length: 4 }, () => outbreak(["pneumonia"], ["fever"], ["consolidation"])),
    ...Array.from({ length: 6 }, () => outbreak(["bloat"], ["cough"], ["oedema"])),
  ];
  const { more, less, outbreaks } = likenessOf(
    "pneumonia",
    ["fever", "cough", "respiratory.lungs", "respiratory.lungs oedema"],
    tallied(ten),
  );

  it("tells what they had much less often, and not what all had", () => {
    expect(outbreaks).toBe(4);
    // Cough: usual (6 + 1) / (10 + 2); of the four none, so that with a usual one more it is a fifth as often.
    expect(less).toEqual([
      { what: "cough", outbreaks: 0, times: expect.closeTo(0.2, 12) as number },
      { what: "respiratory.lungs oedema", outbreaks: 0, times: expect.closeTo(0.2, 12) as number },
    ]);
    // Fever: usual 5/12; all four, so that it is (4 + 5/12) / 5 / (5/12) = 2.12 times as often: not three times.
    expect(more).toEqual([]);
  });

  it("tells what they had much more often, where it is seldom elsewhere", () => {
    const many = [...ten, ...Array.from({ length: 20 }, () => outbreak(["bloat"], ["cough"], ["oedema"]))];
    // Usual 5/32: (4 + 5/32) / 5 / (5/32) = 5.32.
    expect(likenessOf("pneumonia", ["fever"], tallied(many)).more).toEqual([
      { what: "fever", outbreaks: 4, times: expect.closeTo(5.32, 12) as number },
    ]);
  });

  it("does not say that something is seldom from fewer than four", () => {
    expect(likenessOf("pneumonia", ["cough"], tallied(ten.slice(1))).less).toEqual([]);
  });
});

it("says nothing of a disease without published outbreaks", () => {
  expect(likenessOf("pneumonia", ["fever"], tallied([]))).toEqual({ outbreaks: 0, more: [], less: [] });
});
