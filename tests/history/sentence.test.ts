/** A change reads as one veterinarian would tell it to another. */
import { describe, expect, it } from "vitest";
import type { Keyed } from "../../src/cases/model/path.ts";
import { changesOf, type RecordKind } from "../../src/history/changes.ts";
import { factLines, sentence } from "../../src/history/sentence.ts";

const told = (before: Keyed, after: Keyed, kind: RecordKind = "case"): string[] =>
  changesOf(kind, before, after).map((change) => sentence(kind, change));

const diagnosed = (more: Keyed): Keyed => ({
  diagnosis: { disease: [{ text: "enzootic pneumonia", ...more }] },
});
const sampled = (more: Keyed): Keyed => ({ samples: [{ id: "01-A", from: "blood", for: ["pcr"], ...more }] });
const measured = (value: Keyed | undefined): Keyed => ({
  respiratory: { turbinates: { state: "normal", ...(value && { measured: value }) } },
});

describe("sentences", () => {
  it.each<readonly [string, Keyed, Keyed, readonly string[]]>([
    ["an organ added", {}, { lymphoid: { tonsil: "normal" } }, ["Tonsil added: normal"]],
    [
      "an organ with a lesion after all",
      { lymphoid: { tonsil: "normal" } },
      { lymphoid: { tonsil: [{ process: "necrosis", distribution: "focal", size: "4 mm" }] } },
      ["Tonsil: now necrosis, focal, 4 mm, before normal"],
    ],
    [
      "a grade",
      { respiratory: { turbinates: { left: { ventral: 2 } } } },
      { respiratory: { turbinates: { left: { ventral: 3 } } } },
      ["Turbinates (conchae) and nasal septum, left ventral concha: 2 to 3"],
    ],
    [
      "a lobe",
      { respiratory: { lungs: { consolidation: { accessory: 20 } } } },
      { respiratory: { lungs: { consolidation: { accessory: 35 } } } },
      ["Lungs, consolidation, accessory lobe: 20 % to 35 %"],
    ],
    [
      "a tracing that is another file now",
      measured({ tracing: "tracings/pig-14.svg", sha256: "0123456789abcdef".repeat(4) }),
      measured({ tracing: "tracings/pig-14.svg", sha256: "fedcba9876543210".repeat(4) }),
      ["Turbinates (conchae) and nasal septum: tracing changed, and measured again"],
    ],
    [
      "a tracing that was measured",
      measured(undefined),
      measured({ tracing: "tracings/pig-14.svg", sha256: "0123456789abcdef".repeat(4) }),
      [
        "Turbinates (conchae) and nasal septum, measured added: tracing tracings/pig-14.svg, fingerprint 01234567",
      ],
    ],
    [
      "the time of a sample",
      sampled({ at: "2026-03-14T09:20" }),
      sampled({ at: "2026-03-14T09:50" }),
      ["Sample 01-A, time: 09:20 to 09:50"],
    ],
    ["a test", sampled({}), sampled({ for: ["culture", "pcr"] }), ["Sample 01-A, tests added: culture"]],
    [
      "a sample",
      { samples: [] },
      sampled({ into: "plain-tube" }),
      ["Sample 01-A added: from blood, tests pcr, container plain-tube"],
    ],
    [
      "a basis gained",
      diagnosed({ basis: "gross" }),
      diagnosed({ basis: "laboratory" }),
      ['Disease "enzootic pneumonia" gained the laboratory as its basis, before what was seen'],
    ],
    [
      "a basis where there was none",
      { diagnosis: { disease: ["enzootic pneumonia"] } },
      diagnosed({ basis: "laboratory" }),
      ['Disease "enzootic pneumonia" gained the laboratory as its basis'],
    ],
    [
      "an alarm released",
      {},
      {
        authority: [
          { at: "2026-03-14T11:00", stands: "released", for: ["vesicles"], reached: "duty officer" },
        ],
      },
      ["Alarm vesicles released 2026-03-14T11:00, duty officer"],
    ],
    ["a word for a whole system", {}, { urinary: "normal" }, ["Urinary system, the rest added: normal"]],
    [
      "a seal",
      {},
      { seals: [{ by: "H. Marlow", at: "2026-03-20T10:00", sha256: "0" }] },
      ["Signed by H. Marlow on 2026-03-20"],
    ],
  ])("tell of %s", (_, before, after, sentences) => {
    expect(told(before, after)).toEqual(sentences);
  });

  it("tell of visits and results", () => {
    expect(told({ groups: { a: { affected: 3 } } }, { groups: { a: { affected: 5 } } }, "visit")).toEqual([
      "Group a, affected: 3 to 5",
    ]);
    const entry = (ct: number) => ({ entries: [{ sample: "01-A", test: "pcr", agent: "prrsv", ct }] });
    expect(told(entry(30), entry(29), "results")).toEqual(["Result of 01-A, pcr, PRRS virus, ct: 30 to 29"]);
  });

  it("stand a fact a line where git shows a record", () => {
    expect(
      factLines("case", {
        case: "a",
        pig: { sex: null, age: "58 d" },
        respiratory: { lungs: { consolidation: { accessory: 5 } }, trachea: { not_examined: "torn" } },
        samples: [{ id: "01-A", from: "blood" }],
      }),
    ).toEqual([
      "Name of the case: a",
      "Pig, age: 58 d",
      "Lungs, consolidation, accessory lobe: 5 %",
      "Trachea: not examined, torn",
      "Sample 01-A, taken from: blood",
    ]);
  });
});
