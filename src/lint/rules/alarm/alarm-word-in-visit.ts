import { alarmSignsSource } from "../../../knowledge/index.ts";
import { freeTextsOfVisit } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { unrecordedInVisit, wordsText } from "../../shared/alarm-words.ts";

export const alarmWordInVisit: VisitRule = {
  id: "alarm-word-in-visit",
  scope: "visit",
  family: "alarm",
  level: "error",
  summary:
    "Words of the visit that suggest a notifiable disease are recorded in one of its cases, or answered by the authority.",
  protects:
    "The farmer's word for blisters may be the first sign of foot-and-mouth disease, and no alarm reads words.",
  source: alarmSignsSource,
  bad: { visit: "complaint: coughing, and blisters on some snouts" },
  good: {
    visit:
      "complaint: coughing, and blisters on some snouts\nauthority: [{at: 2026-04-22, stands: excluded, for: [vesicles], sample: PCR of vesicle skin}]",
  },
  check(visit, reportVisit) {
    // The case that shows it may be one that was not read.
    if (!visit.complete) return;
    for (const text of freeTextsOfVisit(visit)) {
      const words = unrecordedInVisit(visit, text);
      if (words !== undefined)
        reportVisit(wordsText(words, { settings: visit.settings, inVisit: true }), words.path);
    }
  },
};
