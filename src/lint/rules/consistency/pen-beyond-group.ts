import type { Case } from "../../../cases/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const penBeyondGroup: VisitRule = {
  id: "pen-beyond-group",
  scope: "visit",
  family: "consistency",
  level: "warning",
  summary: "The pen of a pig is one that its group has.",
  protects:
    "Pens show whether pigs were chosen from all over a room; a pen that the room does not have belongs to another.",
  lookAlike:
    "Pens numbered through the whole house: write the name of the house before the number (south 33); several such pens in one visit are passed as they are.",
  source: practice("the farm's own number of pens"),
  bad: { case: "pig: {pen: 33}" },
  good: { case: "pig: {pen: 3}" },
  check(visit, _reportVisit, reportCase) {
    const groups = visit.farm?.record.groups;
    if (groups === undefined) return;
    const beyond = visit.cases.flatMap((one) => {
      const { group = "", pen } = one.record.pig ?? {};
      const pens = Object.hasOwn(groups, group) ? groups[group]?.pens : undefined;
      const number = numberOf(pen);
      return pens !== undefined && number !== undefined && number > pens
        ? [{ one, group, pens, number }]
        : [];
    });
    for (const { one, group, pens, number } of beyond) {
      // Several such pens of one group: they are numbered through the whole house.
      if (beyond.some((other) => other.one !== one && other.group === group && other.number !== number))
        continue;
      reportCase(one)(
        `pig.pen: pen ${number}, yet ${group} has ${pens} pens in farm.yaml. Correct the pen or the group; where pens are numbered through the whole house, write the name of the house before the number (south 33).`,
        ["pig", "pen"],
      );
    }
  },
};

/** 33 of `33` and `"33"`; no number of `B3`. */
const numberOf = (pen: NonNullable<Case["record"]["pig"]>["pen"]): number | undefined =>
  /^\d+$/.test(String(pen ?? "")) ? Number(pen) : undefined;
