import { groupsOf, submissionSource } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";

export const groupOnsetMissing: VisitRule = {
  id: "group-onset-missing",
  scope: "visit",
  family: "history",
  level: "warning",
  summary: "An affected group says when its signs began.",
  protects: "Whether it began after weaning, after a purchase or after the frost is half the diagnosis.",
  lookAlike:
    "Nobody knows the first day: the first day that anybody remembers is near enough, and affected: 0 asks for none.",
  source: submissionSource,
  bad: { visit: "groups: {nursery-2: {onset: }}" },
  good: { visit: "groups: {nursery-2: {onset: 2026-04-10}}" },
  check(visit, reportVisit) {
    for (const [id, group] of groupsOf(visit))
      if ((group.affected ?? 0) > 0 && group.onset === undefined)
        reportVisit(
          `groups.${id}.onset is blank though ${group.affected} pigs are affected. Write the first day of signs, as near as anybody knows.`,
          ["groups", id, "onset"],
          "key",
        );
  },
};
