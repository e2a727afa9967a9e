import { ageClasses } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { medianWeight } from "./weight-implausible.ts";

export const ageClassMismatch: CaseRule = {
  id: "age-class-mismatch",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "The age class fits the age and the weight.",
  protects:
    "Organs due, differentials and strata follow from the class; a weaner filed as a finisher spoils all three.",
  lookAlike:
    "A piglet weaned late, a stunted or a heavy pig: the ages of the classes overlap on purpose; leave pig.class out, and it follows from the age.",
  source: ageClasses.source,
  bad: { case: "pig: {class: finisher, age: 58 d, weight: 17.5 kg}" },
  good: { case: "pig: {class: weaner, age: 58 d, weight: 17.5 kg}" },
  check(one, report) {
    const { ageClass, ageDays, weightKg } = one;
    if (ageClass === undefined) return;
    const { age, weight, title } = ageClasses.classes[ageClass] ?? {};
    const written = one.record.pig?.class !== undefined;
    if (written && age === undefined && ageDays !== undefined && ageDays > 1)
      report(
        `pig.class: ${ageClass} does not go with an age of ${one.record.pig?.age}. Correct one of them.`,
        ["pig", "class"],
      );
    if (written && age !== undefined && ageDays !== undefined && (ageDays < age[0] || ageDays > age[1]))
      report(
        `pig.class: ${ageClass} (${title}) is ${age[0]} to ${age[1]} d old, and this pig is ${one.record.pig?.age}. Correct the class or the age.`,
        ["pig", "class"],
      );
    // Where the growth table reaches, weight-implausible is the sharper question.
    const hasGrowth = !written && ageDays !== undefined && medianWeight(ageDays) !== undefined;
    if (
      !hasGrowth &&
      weight !== undefined &&
      weightKg !== undefined &&
      (weightKg < weight[0] || weightKg > weight[1])
    )
      report(
        `pig.weight: ${one.record.pig?.weight} does not fit the class ${ageClass} (${weight[0]} to ${weight[1]} kg, from memory). Correct the weight, its unit or the class.`,
        ["pig", "weight"],
      );
  },
};
