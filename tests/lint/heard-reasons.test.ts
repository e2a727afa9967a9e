/** Questions that were asked where they have no answer, each beside the record in which the same question is right. */
import { describe, expect, it } from "vitest";
import type { Example } from "../../src/lint/index.ts";
import { lintExample } from "./lay-example.ts";

const speaks = (rule: string, example: Example): boolean =>
  lintExample(example, { only: [rule] }).findings.length > 0;

const fetus =
  "pig: {age: , class: aborted, crown_rump: 17 cm}\ndeath: {manner: born-dead, method: }\nselection: {basis: clinical, onset: , typical: , treated: }";
const given = (answer: string): Example => ({
  case: `selection: {treated: {with: iron dextran, last: ${answer}}}`,
});
const ileum = (finding: string): Example => ({
  case: `intestine: {ileum: [{${finding}}]}\nsamples: [{id: 01-A, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T12:30}]`,
});
const diagnosis = (text: string): Example => ({ case: `diagnosis: {morphologic: ["${text}"]}` });
const pleura = (process: string): Example => ({
  case: `respiratory: {pleura: {pleurisy: , findings: [{process: ${process}, distribution: diffuse}]}}`,
});
const lungs = (process: string): Example => ({
  case: `respiratory: {lungs: {consolidation: , caudal_cranial_part: , grades: , findings: [{process: ${process}, distribution: diffuse}]}}`,
});

describe("a question without an answer is not asked", () => {
  it.each<[rule: string, silent: Example, speaking: Example]>([
    [
      "weight-implausible",
      { case: "pig: {age: 58 d, weight: 5 kg}\nselection: {signs: [wasting]}" },
      { case: "pig: {age: 58 d, weight: 5 kg}" },
    ],
    [
      "weight-implausible",
      { case: "pig: {age: 58 d, weight: 5 kg}\nselection: {basis: culled}" },
      { case: "pig: {age: 58 d, weight: 1 kg}\nselection: {signs: [wasting]}" },
    ],
    [
      "onset-too-long",
      { case: "selection: {onset: 21 d, signs: [wasting]}" },
      { case: "selection: {onset: 21 d}" },
    ],
    [
      "onset-too-long",
      { case: "selection: {onset: 21 d, signs: [skin-lesions]}" },
      { case: "selection: {onset: 21 d, signs: [diarrhoea]}" },
    ],
    [
      "onset-too-long",
      { case: "selection: {onset: 15 d, signs: [lameness]}" },
      { case: "selection: {onset: 5 d, signs: [lameness]}" },
    ],
    [
      "onset-too-long",
      { case: "selection: {onset: 21 d}\nhistory: sneezing in every batch for years" },
      { case: "selection: {onset: 21 d}\nhistory: sneezing since Sunday" },
    ],
    [
      "gut-histology-lost",
      ileum("process: thickening, distribution: segmental, extent: 60 %, exudate: proliferative"),
      ileum("process: hyperaemia, distribution: diffuse"),
    ],
    [
      "air-unread",
      { visit: "environment: ", case: "selection: {signs: [dyspnoea]}" },
      { visit: "environment: ", case: "selection: {signs: [dyspnoea, cough]}" },
    ],
    ["treated-pig", given(", antimicrobial: no"), given(", antimicrobial: yes")],
    ["treated-pig", given(", antimicrobial: no"), given("")],
    ["last-treatment-missing", given(", antimicrobial: no"), given(", antimicrobial: yes")],
    ["fact-missing", { case: fetus }, { case: fetus.replace("manner: born-dead", "manner: ") }],
    ["observation-missing", pleura("fibrin"), pleura("adhesion")],
    ["observation-missing", lungs("oedema"), lungs("consolidation")],
    [
      "disease-as-lesion",
      diagnosis("Lungs: no enzootic pneumonia"),
      diagnosis("Lungs: enzootic pneumonia, moderate"),
    ],
    [
      "sample-organ-absent",
      {
        case: "pig: {age: , class: mummy, sex: , weight: , crown_rump: 12 cm}\nsamples: [{id: 01-A, from: respiratory.lungs, into: chilled, for: [pcr]}]",
      },
      {
        case: "pig: {age: , class: mummy, sex: , weight: , crown_rump: 12 cm}\nsamples: [{id: 01-A, from: endocrine.pituitary, into: chilled, for: [pcr]}]",
      },
    ],
    [
      "no-acute-untreated-pig",
      {
        case: "selection: {onset: 21 d, signs: [wasting]}",
        others: ["case: birch-2026-04-20-02\npig: {tag: '902'}\nselection: {onset: 21 d, signs: [wasting]}"],
        visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]\npigs: {few: }",
      },
      {
        case: "selection: {onset: 21 d}",
        others: ["case: birch-2026-04-20-02\npig: {tag: '902'}\nselection: {onset: 21 d}"],
        visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]\npigs: {few: }",
      },
    ],
  ])("%s: %j", (rule, silent, speaking) => {
    expect(speaks(rule, silent)).toBe(false);
    expect(speaks(rule, speaking)).toBe(true);
  });
});
