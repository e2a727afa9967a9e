import { valueAt } from "../../../cases/index.ts";
import { type CaseRule, fromMemory } from "../../rule.ts";

export const newbornNeverBreathed: CaseRule = {
  id: "newborn-never-breathed",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "A piglet filed as born alive that died on its first day has lungs that float.",
  protects:
    "Lungs that sink were never filled: the piglet was stillborn, and the farm counts one dead piglet in the wrong column.",
  lookAlike:
    "Lungs of a weak or premature newborn that breathed too little to float: say in a note on the lungs what showed life, or record milk in the stomach, and nothing is asked.",
  source: fromMemory("lung float test, standard texts"),
  bad: {
    case: "pig: {age: 6 h, class: suckling, weight: 1.3 kg}\nstomach: {stomach_content: {state: normal, milk: none}}\nrespiratory: {lungs: {state: normal, consolidation: , caudal_cranial_part: , float: sinks}}\ndiagnosis: ",
  },
  good: {
    case: "pig: {age: 6 h, class: suckling, weight: 1.3 kg}\nstomach: {stomach_content: {state: normal, milk: none}}\nrespiratory: {lungs: {state: normal, consolidation: , caudal_cranial_part: , float: floats}}\ndiagnosis: ",
  },
  check(one, report) {
    const float = ["respiratory", "lungs", "float"];
    if (one.ageClass !== "suckling" || one.ageDays === undefined || one.ageDays > 1) return;
    const milk = valueAt(one.record, ["stomach", "stomach_content", "milk"]);
    const lived =
      milk === "little" ||
      milk === "full" ||
      valueAt(one.record, ["respiratory", "lungs", "note"]) !== undefined;
    if (valueAt(one.record, float) === "sinks" && !lived)
      report(
        "respiratory.lungs.float: the lungs sink, so the piglet never breathed. File it as class: stillborn without an age, or say in a note on the lungs what showed that it lived.",
        float,
      );
  },
};
