import { unknownName } from "../../../cases/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const visitGroupUnknown: VisitRule = {
  id: "visit-group-unknown",
  scope: "visit",
  family: "history",
  silent: "never",
  level: "error",
  summary: "The groups, air readings and treatments of a visit belong to groups that the farm has.",
  protects: "Counts and ammonia under a mistyped name belong to no pig.",
  lookAlike:
    "A group that the farm has made since: add it to groups in farm.yaml. Air measured in a corridor goes into a note of the group beside it.",
  source: practice("common practice of record keeping: names join files"),
  bad: { visit: "environment: [{group: nursery-22, ammonia: 14 ppm}, {group: nursery-2, ammonia: 12 ppm}]" },
  good: { visit: "environment: [{group: nursery-2, ammonia: 14 ppm}]" },
  check(visit, reportVisit) {
    const ofVisit = Object.keys(visit.record.groups ?? {});
    const ofFarm = Object.keys(visit.farm?.record.groups ?? {});
    const known = ofFarm.length > 0 ? ofFarm : ofVisit;
    if (known.length === 0) return;
    for (const id of ofVisit)
      if (!known.includes(id))
        reportVisit(`groups: in farm.yaml ${unknownName(id, known, "group")}`, ["groups", id], "key");
    for (const [index, { group }] of (visit.record.environment ?? []).entries())
      if (!known.includes(group))
        reportVisit(`environment: ${unknownName(group, known, "group")}`, ["environment", index, "group"]);
    for (const [index, entry] of (visit.record.treatments ?? []).entries())
      if (typeof entry === "object" && entry.group !== undefined && !known.includes(entry.group))
        reportVisit(`treatments: ${unknownName(entry.group, known, "group")}`, [
          "treatments",
          index,
          "group",
        ]);
  },
};
