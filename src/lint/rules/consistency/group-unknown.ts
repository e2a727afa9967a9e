import { unknownName } from "../../../cases/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const groupUnknown: CaseRule = {
  id: "group-unknown",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "The pig's group is one of the farm's groups.",
  protects: "Prevalence is counted by group; a mistyped name makes a group of one.",
  lookAlike:
    "A pig bought in or kept back belongs to no group of the list: add its group to farm.yaml, or to the groups of the visit where there is no farm file.",
  source: practice("a denominator needs a counted group; common practice"),
  bad: { case: "pig: {group: nursery-22}" },
  good: { case: "pig: {group: nursery-2}" },
  check(one, report) {
    const group = one.record.pig?.group;
    const groups = one.farm?.record.groups ?? one.visit?.record.groups;
    if (group === undefined || groups === undefined || Object.hasOwn(groups, group)) return;
    const names = Object.keys(groups);
    if (names.length === 0) return;
    const file = one.farm?.record.groups === undefined ? one.visit?.file : one.farm.file;
    report(`pig.group: in ${file} ${unknownName(group, names, "group")}`, ["pig", "group"]);
  },
};
