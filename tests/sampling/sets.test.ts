import { describe, expect, it } from "vitest";
import { organById, sampleRules } from "../../src/knowledge/index.ts";
import { isMaterial, isSampled, nearestMaterial, spell } from "../../src/record/index.ts";
import { amountOf, unfitContainers } from "../../src/sampling/index.ts";
import { pig } from "./pig.ts";

describe("what a sample comes from", () => {
  it.each([
    ["respiratory.lung", "respiratory.lungs"],
    ["lungs", "respiratory.lungs"],
    ["ileum", "intestine.ileum"],
    ["intestine.illeum", "intestine.ileum"],
    ["blod", "blood"],
  ])("%s is no material; %s is near", (written, intended) => {
    expect(isMaterial(written)).toBe(false);
    expect(nearestMaterial(written)).toBe(intended);
  });

  it("is an organ, a system or a named material", () => {
    expect(["respiratory.lungs", "intestine", "csf", "feed"].every(isMaterial)).toBe(true);
  });

  it("in the knowledge files always exists", () => {
    const { sampled_by, toxin_gene, formalin, not_sterile, gut_bag, toxicology_amounts } = sampleRules;
    const named = [
      ...Object.entries(sampled_by).flatMap(([organ, others]) => [organ, ...others]),
      ...toxin_gene.from,
      ...formalin.thick_allowed,
      ...not_sterile,
      ...gut_bag,
      ...Object.keys(toxicology_amounts),
    ];
    expect(named.filter((id) => !isMaterial(id))).toEqual([]);
  });
});

describe("containers", () => {
  it("spoil only the tests they spoil", () => {
    const found = unfitContainers(pig("samples: []"), {
      id: "01-A",
      from: "lymphoid.spleen",
      into: "formalin",
      for: ["histology", "culture", "pcr"],
    });
    expect(found.map(({ id }) => id)).toEqual(["culture-in-formalin", "pcr-from-formalin"]);
  });

  it.each([
    ["20 g", 20],
    ["1.5 kg", 1500],
    ["5 ml", 5],
    ["1 l", 1000],
    ["much", undefined],
  ])("amount %s: %s", (text, amount) => {
    expect(amountOf(text)).toBe(amount);
  });
});

describe("a lesion in the parcel", () => {
  it.each([
    ["respiratory.nares", "respiratory.turbinates", true],
    ["respiratory.nares", "respiratory.lungs", true],
    ["respiratory.lungs", "lymphoid.bronchial_nodes", true],
    ["respiratory.lungs", "lymphoid.mesenteric_nodes", false],
    ["faeces", "intestine.intestinal_content", true],
    ["lymphoid.tonsil", "respiratory.turbinates", true],
    ["lymphoid.tonsil", "respiratory.lungs", false],
  ])("%s answers for %s: %s", (from, id, answers) => {
    const one = pig(`samples: [{id: 01-A, from: ${from}, into: chilled, for: [pcr]}]`);
    const organ = organById(id);
    expect(organ !== undefined && isSampled(one, organ)).toBe(answers);
  });
});

describe("a time in words", () => {
  it.each([
    [0.25, "15 min"],
    [3, "3 h"],
    [3.5, "3 h 30 min"],
    [30.2, "30 h"],
  ])("%d h: %s", (hours, words) => {
    expect(spell(hours)).toBe(words);
  });
});
