import { isUnborn, quantity } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

export const crownRumpImplausible: CaseRule = {
  id: "crown-rump-implausible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "The crown-rump length is one that a pig fetus can have.",
  protects: "The fetus is aged by it: millimetres for centimetres shift the date of the infection by weeks.",
  lookAlike:
    "A fetus of the fourth week, or one just before term: the limits, 20 to 380 mm, hold both; a length of a piglet that lived is not looked at.",
  source: plausible.source,
  bad: {
    case: "pig: {age: , class: stillborn, crown_rump: 9 mm, weight: 1.1 kg, temperature: }\nselection: {basis: convenience, signs: [none], onset: , typical: }\ndeath: {manner: born-dead, method: }\nexternal: {skin: {state: normal, meconium: none}}\nlymphoid: {bronchial_nodes: normal}\nrespiratory: {turbinates: , lungs: {state: normal, consolidation: , caudal_cranial_part: , float: sinks}}\nstomach: {stomach_content: {state: normal, milk: none}}\nplacental: {umbilical_cord: {state: normal, cord: whole}, placenta: normal}\nendocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}\ndiagnosis: ",
  },
  good: {
    case: "pig: {age: , class: stillborn, crown_rump: 27 cm, weight: 1.1 kg, temperature: }\nselection: {basis: convenience, signs: [none], onset: , typical: }\ndeath: {manner: born-dead, method: }\nexternal: {skin: {state: normal, meconium: none}}\nlymphoid: {bronchial_nodes: normal}\nrespiratory: {turbinates: , lungs: {state: normal, consolidation: , caudal_cranial_part: , float: sinks}}\nstomach: {stomach_content: {state: normal, milk: none}}\nplacental: {umbilical_cord: {state: normal, cord: whole}, placenta: normal}\nendocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}\ndiagnosis: ",
  },
  check(one, report) {
    const { ageClass } = one;
    if (one.record.pig?.crown_rump === undefined) return;
    const mm = quantity("length", one.record.pig.crown_rump);
    if (mm === undefined || (ageClass !== undefined && !isUnborn(ageClass))) return;
    const [low, high] = plausible.crown_rump_mm;
    if (mm < low || mm > high)
      report(
        `pig.crown_rump: ${one.record.pig.crown_rump} is outside ${low} to ${high} mm. Check mm and cm.`,
        ["pig", "crown_rump"],
      );
  },
};
