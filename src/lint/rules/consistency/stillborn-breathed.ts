import { valueAt } from "../../../cases/index.ts";
import { type CaseRule, fromMemory } from "../../rule.ts";

export const stillbornBreathed: CaseRule = {
  id: "stillborn-breathed",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "A piglet called stillborn has not breathed.",
  protects:
    "Floating lungs mean that it was born alive and died on the farm’s watch, which is another problem with another remedy.",
  lookAlike:
    "Resuscitation, or gas of putrefaction: the lungs float though the piglet never breathed. Say so in a note on the lungs, and nothing is asked.",
  source: fromMemory("lung float test, standard texts"),
  bad: {
    case: "pig: {age: , class: stillborn, crown_rump: 27 cm, weight: 1.1 kg, temperature: }\nselection: {basis: convenience, signs: [none], onset: , typical: }\ndeath: {manner: born-dead, method: }\nexternal: {skin: {state: normal, meconium: none}}\nlymphoid: {bronchial_nodes: normal}\nrespiratory: {turbinates: , lungs: {state: normal, consolidation: , caudal_cranial_part: , float: floats}}\nstomach: {stomach_content: {state: normal, milk: none}}\nplacental: {umbilical_cord: {state: normal, cord: whole}, placenta: normal}\nendocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}\ndiagnosis: ",
  },
  good: {
    case: "pig: {age: , class: stillborn, crown_rump: 27 cm, weight: 1.1 kg, temperature: }\nselection: {basis: convenience, signs: [none], onset: , typical: }\ndeath: {manner: born-dead, method: }\nexternal: {skin: {state: normal, meconium: none}}\nlymphoid: {bronchial_nodes: normal}\nrespiratory: {turbinates: , lungs: {state: normal, consolidation: , caudal_cranial_part: , float: sinks}}\nstomach: {stomach_content: {state: normal, milk: none}}\nplacental: {umbilical_cord: {state: normal, cord: whole}, placenta: normal}\nendocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}\ndiagnosis: ",
  },
  check(one, report) {
    if (one.ageClass !== "stillborn") return;
    const float = ["respiratory", "lungs", "float"];
    const explained = valueAt(one.record, ["respiratory", "lungs", "note"]) !== undefined;
    if (valueAt(one.record, float) === "floats" && !explained)
      report(
        "respiratory.lungs.float: the lungs float, so the piglet breathed. File it as suckling with an age in hours, unless resuscitation or gas of putrefaction made them float; then say so in a note on the lungs.",
        float,
      );
  },
};
