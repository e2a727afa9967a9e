import { type CaseRule, verified } from "../../rule.ts";

export const lastSeenAliveMissing: CaseRule = {
  id: "last-seen-alive-missing",
  scope: "case",
  family: "history",
  level: "note",
  summary: "A pig found dead says when it was last seen alive.",
  protects:
    "The hours between the last check and the find are hours of autolysis; without them half a day of decomposition passes for fresh.",
  lookAlike:
    "Nobody had looked for a day: that is the answer, death: {note: not seen since the evening before}; the history of the case is read as well.",
  source: verified(
    "time of death in submission guidelines (Animal Health Laboratory, University of Guelph; NDSU Veterinary Diagnostic Laboratory)",
  ),
  bad: { case: "selection: {basis: found-dead}\ndeath: {manner: found-dead, method: }" },
  good: {
    case: "selection: {basis: found-dead}\ndeath: {manner: found-dead, method: , note: last seen alive at 06:00}",
  },
  check(one, report) {
    if (
      one.record.death?.manner === "found-dead" &&
      one.record.death.note === undefined &&
      one.record.history === undefined
    )
      report(
        "death.note is blank for a pig found dead. Write when it was last seen alive, such as note: last seen alive at 22:00.",
        ["death", "note"],
        "key",
      );
  },
};
