/** What the history of a group rests on; shared by the rules about head counts and days. */
import type { Visit } from "../cases/index.ts";

export type GroupOfVisit = NonNullable<Visit["record"]["groups"]>[string];

/** The groups that the visit saw, with their name. */
export const groupsOf = (visit: Visit): [string, GroupOfVisit][] => Object.entries(visit.record.groups ?? {});

export const submissionSource = {
  cite: "submission guidelines: Animal Health Laboratory, University of Guelph; NDSU Veterinary Diagnostic Laboratory (group size, numbers sick and dead, first day)",
  confidence: "verified",
} as const;
