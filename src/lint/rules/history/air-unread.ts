import { selectionRules } from "../../../knowledge/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const airUnread: VisitRule = {
  id: "air-unread",
  scope: "visit",
  family: "history",
  level: "note",
  summary: "Where pigs sneeze or cough, the air of the room is measured.",
  protects:
    "Whether infection or bad air lies behind conchal loss and cough is the first question, and ammonia and dust cannot be measured at the laboratory.",
  lookAlike:
    "A room without pigs or a meter on the day: name the group under environment with a note that nothing could be measured, and it counts as answered.",
  source: practice(
    "common practice of herd visits: turbinate loss has infectious and environmental causes (dust, gases)",
  ),
  bad: { visit: "environment: " },
  good: { visit: "environment: [{group: nursery-2, ammonia: 14 ppm, dust: 2.6 mg/m3}]" },
  check(visit, reportVisit) {
    const settled = new Set(visit.record.environment?.map(({ group }) => group));
    for (const one of visit.cases) {
      const group = one.record.pig?.group;
      if (group === undefined || settled.has(group)) continue;
      if (!one.signs.some((sign) => selectionRules.air_signs.includes(sign))) continue;
      // A group that does not exist has no air; other rules name it.
      if (visit.farm?.record.groups !== undefined && !Object.hasOwn(visit.farm.record.groups, group))
        continue;
      settled.add(group);
      reportVisit(
        `environment: no air reading of ${group}, where pigs sneeze or cough. Write {group: ${group}, ammonia: … ppm, dust: … mg/m3, temperature: … °C}, or say under note that nothing could be measured.`,
        ["environment"],
        "key",
      );
    }
  },
};
