import { isUnborn, isWeaned } from "../../../cases/index.ts";
import { ageClasses } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

export const groupClassMismatch: CaseRule = {
  id: "group-class-mismatch",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "The age of the pig fits its group.",
  protects:
    "A weaner filed in a finisher room is counted in the wrong denominator, or carries the wrong tag.",
  lookAlike:
    "A piglet still with its sow at five weeks is passed up to six. A group that holds two classes: leave its class out of farm.yaml.",
  source: ageClasses.source,
  bad: { case: "pig: {group: finisher-1}" },
  good: { case: "pig: {group: nursery-2}" },
  check(one, report) {
    const { ageClass, ageDays, farm, record } = one;
    const group = record.pig?.group;
    if (group === undefined || ageClass === undefined) return;
    const groupClass = farm?.record.groups?.[group]?.class;
    if (groupClass === undefined || groupClass === ageClass) return;
    // Fetuses belong to the sow, piglets lie with her or were weaned early.
    if (isUnborn(ageClass) || (!isWeaned(ageClass) && groupClass !== "finisher")) return;
    const lies = ageClasses.classes.suckling?.age ?? [0, 0];
    // Without a word on its class, a pig that may still suckle lies with the sow.
    if (groupClass === "adult" && record.pig?.class === undefined && (ageDays ?? lies[1] + 1) <= lies[1])
      return;
    const { age, title } = ageClasses.classes[groupClass] ?? {};
    if (ageDays !== undefined && age !== undefined && ageDays >= age[0] && ageDays <= age[1]) return;
    report(
      `pig.group: ${group} is a group of class ${groupClass}${title === undefined ? "" : ` (${title.toLowerCase()})`}, and this pig is of class ${ageClass}. Correct the group, the age or the class in farm.yaml.`,
      ["pig", "group"],
    );
  },
};
