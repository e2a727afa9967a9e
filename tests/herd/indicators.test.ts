/** What one pig answers: yes, no, or nothing that counts. */
import { describe, expect, test } from "vitest";
import { indicatorAnswer } from "../../src/herd/index.ts";
import { type Indicator, indicators } from "../../src/knowledge/index.ts";
import { consolidation, type Json, lobes, organ, pig, snout } from "../score/pigs.ts";

const shipped = (id: string): Indicator => {
  const indicator = indicators.get(id);
  if (indicator === undefined) throw new Error(`no indicator ${id}`);
  return indicator;
};
const snoutGrade = (grade: number) =>
  organ("respiratory.turbinates", { section: "premolar-1", grades: { "maff-1978": grade } });
const wholeLung = (share: number) =>
  organ("respiratory.lungs", { consolidation: Object.fromEntries(lobes.map((lobe) => [lobe, share])) });

describe("score form", () => {
  test.each([
    ["snout-grade-2-up", snoutGrade(1), "no"],
    ["snout-grade-2-up", snoutGrade(2), "yes"],
    ["snout-grade-3-up", snoutGrade(2), "no"],
    ["snout-grade-3-up", snoutGrade(3), "yes"],
    ["turbinate-loss", organ("respiratory.turbinates", snout(0)), "no"],
    ["turbinate-loss", organ("respiratory.turbinates", snout(0, { septum: "slight" })), "yes"],
    ["lung-consolidation", wholeLung(0), "no"],
    [
      "lung-consolidation",
      organ("respiratory.lungs", { consolidation: consolidation({ accessory: 1 }) }),
      "yes",
    ],
    // German three-class rule, Annex 3 (verified): up to 10 % is class 0, above it class 1
    ["lung-consolidation-10-percent", wholeLung(10), "no"],
    ["lung-consolidation-10-percent", wholeLung(10.1), "yes"],
    ["lung-consolidation-10-percent", wholeLung(30.1), "yes"],
    ["pleurisy", organ("respiratory.pleura", { pleurisy: { left: "none", right: "cranioventral" } }), "yes"],
    [
      "pleurisy-dorsocaudal",
      organ("respiratory.pleura", { pleurisy: { left: "none", right: "cranioventral" } }),
      "no",
    ],
    [
      "pleurisy-dorsocaudal",
      organ("respiratory.pleura", { pleurisy: { left: "none", right: "dorsocaudal-focal" } }),
      "yes",
    ],
    ["pleurisy", organ("respiratory.pleura", "normal"), "no"],
  ])("%s of %j: %s", (id, record, answer) => {
    expect(indicatorAnswer(shipped(id), pig(record))).toBe(answer);
  });

  test.each([
    ["blank", {}],
    ["not examined", organ("respiratory.lungs", { not_examined: "kept for the laboratory" })],
    ["not assessable", organ("respiratory.lungs", { not_assessable: { because: "autolysed", why: "warm" } })],
  ])("%s is not examined", (_, record) => {
    expect(indicatorAnswer(shipped("lung-consolidation"), pig(record))).toBe("not examined");
  });

  test.each([
    ["a lobe missing", organ("respiratory.lungs", { consolidation: { left_cranial: 0 } })],
    ["normal by system only", { respiratory: "normal" }],
  ])("%s was looked at and is not graded", (_, record) => {
    expect(indicatorAnswer(shipped("lung-consolidation"), pig(record))).toBe("not graded");
  });

  test.each([
    ["yes", { keratin: 30, erosion: 0 }, 1],
    ["not graded", { keratin: 30, erosion: 0 }, 2],
    ["no", { keratin: 30, ulcer: 0 }, 3],
    ["yes", { erosion: 5, keratin: 0 }, 2],
  ])(
    "answers %s of a range that lies on one side of the limit: %j, at least %d",
    (answer, entry, at_least) => {
      const asked = { ...shipped("lung-consolidation"), score: { scale: "swaby-gregory-2012", at_least } };
      expect(indicatorAnswer(asked, pig(organ("stomach.pars_oesophagea", entry)))).toBe(answer);
    },
  );

  test("a snout sawn too far in front is not graded", () => {
    const record = organ("respiratory.turbinates", {
      section: "rostral-to-premolar-1",
      grades: { "maff-1978": 5 },
    });
    expect(indicatorAnswer(shipped("snout-grade-2-up"), pig(record))).toBe("not graded");
  });
});

describe("finding form", () => {
  const asks = (id: string, process?: string[]): Indicator => ({
    title: "Something",
    finding: { organ: id, ...(process !== undefined && { process }) },
  });
  const answer = (indicator: Indicator, record: Json) => indicatorAnswer(indicator, pig(record));
  const liver = (entry: unknown) => organ("liver_pancreas.liver", entry);

  test.each([
    [undefined, [{ process: "milk-spots" }], "yes"],
    [["milk-spots"], [{ process: "milk-spots" }], "yes"],
    [["milk-spots"], { findings: [{ process: "abscess" }, { process: "milk-spots" }], note: "many" }, "yes"],
    [["milk-spots"], [{ process: "abscess" }], "no"],
    [["milk-spots"], "normal", "no"],
    [["milk-spots"], { state: "normal", weight: "600 g" }, "no"],
    [["milk-spots"], [{ process: "milk-spots", certainty: "artefact" }], "no"],
    [undefined, [{ process: "autolysis" }], "no"],
    [["autolysis"], [{ process: "autolysis" }], "yes"],
    [undefined, null, "not examined"],
    [undefined, { weight: "600 g" }, "not examined"],
    [undefined, { not_examined: "thrown away" }, "not examined"],
    [undefined, { not_assessable: { because: "damaged", why: "torn" } }, "not examined"],
  ])("%j on a liver that is %j: %s", (process, entry, expected) => {
    expect(answer(asks("liver_pancreas.liver", process), liver(entry))).toBe(expected);
  });

  test("a whole system that is normal counts as no", () => {
    expect(answer(asks("liver_pancreas.liver"), { liver_pancreas: "normal" })).toBe("no");
  });

  test.each([
    [{ left: [{ process: "cyst" }], right: "normal" }, "yes"],
    [{ left: [{ process: "cyst" }] }, "yes"],
    [{ left: "normal", right: "normal" }, "no"],
    [{ left: "normal", right: [{ process: "infarct" }] }, "no"],
    [{ left: "normal" }, "not examined"],
    [{ left: "normal", right: { not_examined: "lost" } }, "not examined"],
  ])("a cyst in kidneys that are %j: %s", (entry, expected) => {
    expect(answer(asks("urinary.kidneys", ["cyst"]), organ("urinary.kidneys", entry))).toBe(expected);
  });

  const lungs = (entry: unknown) => organ("respiratory.lungs", entry);
  const turbinates = (entry: unknown) => organ("respiratory.turbinates", entry);
  test.each([
    // what was graded once need not be described again
    [
      asks("respiratory.lungs", ["consolidation"]),
      lungs({ consolidation: consolidation({ accessory: 5 }) }),
      "yes",
    ],
    [asks("respiratory.lungs", ["consolidation"]), lungs({ consolidation: { accessory: 5 } }), "yes"],
    [asks("respiratory.lungs", ["consolidation"]), lungs({ consolidation: consolidation() }), "no"],
    [asks("respiratory.lungs", ["consolidation"]), lungs({ consolidation: { accessory: 0 } }), "not graded"],
    [asks("respiratory.lungs", ["consolidation"]), lungs({ grades: { "madec-kobisch-1982": 3 } }), "yes"],
    [asks("respiratory.lungs", ["consolidation"]), lungs({ grades: { "madec-kobisch-1982": 0 } }), "no"],
    [asks("respiratory.lungs"), lungs({ consolidation: consolidation({ accessory: 5 }) }), "yes"],
    [asks("respiratory.lungs", ["abscess"]), lungs({ consolidation: consolidation({ accessory: 5 }) }), "no"],
    [asks("respiratory.turbinates", ["atrophy"]), turbinates(snout(1)), "yes"],
    [asks("respiratory.turbinates", ["atrophy"]), turbinates(snout(0, { septum: "marked" })), "no"],
    [asks("respiratory.turbinates", ["deviation"]), turbinates(snout(0, { septum: "marked" })), "yes"],
    [
      asks("respiratory.turbinates", ["atrophy"]),
      turbinates(snout(1, { section: "rostral-to-premolar-1" })),
      "not graded",
    ],
    [asks("respiratory.turbinates", ["atrophy"]), snoutGrade(1), "no"],
    [asks("respiratory.turbinates", ["atrophy"]), snoutGrade(2), "yes"],
  ])("%j of %j: %s", (indicator, record, expected) => {
    expect(answer(indicator, record)).toBe(expected);
  });

  test("an indicator that asks nothing is refused", () => {
    expect(() => answer({ title: "Nothing" }, {})).toThrow(/needs a score/);
    expect(() => answer(asks("digestive.wing"), {})).toThrow(/digestive\.wing/);
  });
});
