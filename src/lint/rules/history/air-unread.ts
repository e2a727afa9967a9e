import { signFamilies } from "../../../knowledge/index.ts";
import type { VisitRule } from "../../rule.ts";

export const airUnread: VisitRule = {
  id: "air-unread",
  scope: "visit",
  family: "history",
  level: "note",
  summary: "Where pigs sneeze or cough, the air of the room was read.",
  protects:
    "Loss of the conchae and cough are told apart into infection and bad air first; ammonia and dust cannot be read at the laboratory.",
  source: {
    cite: "turbinate loss has infectious and environmental causes (dust, gases); common practice",
    confidence: "common-practice",
  },
  bad: { visit: "environment: " },
  good: { visit: "environment: [{group: nursery-2, ammonia: 14 ppm, dust: 2.6 mg/m3}]" },
  check(visit, reportVisit) {
    const read = new Set((visit.record.environment ?? []).map(({ group }) => group));
    const told = new Set<string>();
    for (const one of visit.cases) {
      const group = one.record.pig?.group;
      const families = signFamilies(one.signs);
      if (group === undefined || read.has(group) || told.has(group)) continue;
      if (!families.includes("respiratory") && !families.includes("nasal")) continue;
      // A group that does not exist has no air; other rules name it.
      if (visit.farm?.record.groups !== undefined && !Object.hasOwn(visit.farm.record.groups, group))
        continue;
      told.add(group);
      reportVisit(
        `environment: no reading of ${group}, where pigs sneeze or cough. Write {group: ${group}, ammonia: … ppm, dust: … mg/m3, temperature: … °C}, or that nothing could be read under note.`,
        ["environment"],
        "key",
      );
    }
  },
};
