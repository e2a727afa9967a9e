import { type CaseRule, practice } from "../../rule.ts";

export const mummyCultured: CaseRule = {
  id: "mummy-cultured",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "A mummy is not sent for culture.",
  protects:
    "Dry tissue weeks dead grows nothing or contaminants; its length and a test for viruses are better value.",
  source: practice("no bacteriology from dry mummies, common practice"),
  bad: {
    case: "pig: {age: , class: mummy, sex: , weight: , crown_rump: 12 cm}\nselection: {basis: convenience, signs: [none], onset: , typical: }\ndeath: {manner: born-dead, method: }\nexternal: {ears: , eyes: , snout: , feet: , tail: , navel: , perineum: , subcutis: }\nlymphoid: \nrespiratory: \ncardiovascular: \nupper_digestive: \nstomach: \nintestine: \nliver_pancreas: \nserosa: \nurinary: \nnervous: \nlocomotor: \ndiagnosis: \nplacental: {umbilical_cord: normal, placenta: normal}\nendocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}\nsamples: [{id: 01-A, from: placental.placenta, into: chilled, for: [culture], at: 2026-04-20T10:05}]",
  },
  good: {
    case: "pig: {age: , class: mummy, sex: , weight: , crown_rump: 12 cm}\nselection: {basis: convenience, signs: [none], onset: , typical: }\ndeath: {manner: born-dead, method: }\nexternal: {ears: , eyes: , snout: , feet: , tail: , navel: , perineum: , subcutis: }\nlymphoid: \nrespiratory: \ncardiovascular: \nupper_digestive: \nstomach: \nintestine: \nliver_pancreas: \nserosa: \nurinary: \nnervous: \nlocomotor: \ndiagnosis: \nplacental: {umbilical_cord: normal, placenta: normal}\nendocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}\nsamples: [{id: 01-A, from: placental.placenta, into: chilled, for: [pcr], at: 2026-04-20T10:05}]",
  },
  check(one, report) {
    if (one.ageClass !== "mummy") return;
    for (const [index, sample] of (one.record.samples ?? []).entries())
      if (sample.for?.includes("culture"))
        report(
          `samples[${index}].for: culture of a mummy. Ask for pcr instead, and culture a fresh littermate.`,
          ["samples", index, "for"],
        );
  },
};
