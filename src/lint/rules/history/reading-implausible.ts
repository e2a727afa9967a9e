import { formatPath } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import type { VisitRule } from "../../rule.ts";

export const readingImplausible: VisitRule = {
  id: "reading-implausible",
  scope: "visit",
  family: "history",
  silent: "never",
  level: "error",
  summary: "Air readings are such as occur in a pig house.",
  protects:
    "A slipped decimal point turns 22 ppm of ammonia into 2200, and the air is then blamed for every snout in the room.",
  lookAlike:
    "A meter that shows its end stop, or an outdoor reading of frost: the limits are wide; what the meter could not show belongs into the note of the reading.",
  source: plausible.source,
  bad: { visit: "environment: [{group: nursery-2, at: 2026-04-20T08:30, ammonia: 2200 ppm}]" },
  good: { visit: "environment: [{group: nursery-2, at: 2026-04-20T08:30, ammonia: 22 ppm}]" },
  check(visit, reportVisit) {
    for (const [index, reading] of visit.record.environment?.entries() ?? [])
      for (const key of kinds) {
        const text = reading[key];
        const value = Number.parseFloat(text ?? "");
        const [lowest, highest] = plausible.air[key];
        const path = ["environment", index, key];
        // Not a number where nothing was read.
        if (value < lowest || value > highest)
          reportVisit(
            `${formatPath(path)}: ${text} is hard to believe; ${lowest} to ${highest} ${unit(text)} would be plausible (from memory, deliberately wide). Check the decimal point and the unit.`,
            path,
          );
      }
  },
};

const kinds = ["ammonia", "carbon_dioxide", "dust", "temperature", "humidity"] as const;

/** `ppm` of `18 ppm`. */
const unit = (text: string | undefined): string => (text ?? "").replace(/^[-\d.\s]+/, "");
