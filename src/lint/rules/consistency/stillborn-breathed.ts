import { valueAt } from "../../../cases/index.ts";
import { type CaseRule, fromMemory } from "../../rule.ts";

export const stillbornBreathed: CaseRule = {
  id: "stillborn-breathed",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "A piglet called stillborn has neither breathed nor suckled.",
  protects:
    "Floating lungs or milk in the stomach mean that it was born alive and died on the farm’s watch, which is another problem with another remedy.",
  source: fromMemory("lung float test and milk in the stomach, standard texts"),
  bad: {
    case: "pig: {age: , class: stillborn, crown_rump: 27 cm, weight: 1.1 kg, temperature: }\nselection: {basis: convenience, signs: [none], onset: , typical: }\ndeath: {manner: born-dead, method: }\nexternal: {skin: {state: normal, meconium: none}}\nlymphoid: {bronchial_nodes: normal}\nrespiratory: {turbinates: , lungs: {state: normal, consolidation: , caudal_cranial_part: , float: floats}}\nstomach: {stomach_content: {state: normal, milk: none}}\nplacental: {umbilical_cord: {state: normal, cord: whole}, placenta: normal}\nendocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}\ndiagnosis: ",
  },
  good: {
    case: "pig: {age: , class: stillborn, crown_rump: 27 cm, weight: 1.1 kg, temperature: }\nselection: {basis: convenience, signs: [none], onset: , typical: }\ndeath: {manner: born-dead, method: }\nexternal: {skin: {state: normal, meconium: none}}\nlymphoid: {bronchial_nodes: normal}\nrespiratory: {turbinates: , lungs: {state: normal, consolidation: , caudal_cranial_part: , float: sinks}}\nstomach: {stomach_content: {state: normal, milk: none}}\nplacental: {umbilical_cord: {state: normal, cord: whole}, placenta: normal}\nendocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}\ndiagnosis: ",
  },
  check(one, report) {
    if (one.ageClass !== "stillborn") return;
    const milk = ["stomach", "stomach_content", "milk"];
    const float = ["respiratory", "lungs", "float"];
    const explained = valueAt(one.record, ["respiratory", "lungs", "note"]) !== undefined;
    if (valueAt(one.record, float) === "floats" && !explained)
      report(
        "respiratory.lungs.float: the lungs float, so the piglet breathed. File it as suckling with an age in hours, unless resuscitation or gas of putrefaction made them float; then say so in a note on the lungs.",
        float,
      );
    const drunk = valueAt(one.record, milk);
    if (drunk === "little" || drunk === "full")
      report(
        "stomach.stomach_content.milk: there is milk in the stomach, so the piglet lived and suckled. File it as suckling with an age in hours.",
        milk,
      );
  },
};
