import { quantity, saysNothing } from "../../../cases/index.ts";
import { autolysis } from "../../../knowledge/index.ts";
import { diedAt, hoursBetween, openedAt, spell } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

const limit = quantity("duration", autolysis.storage_after) ?? Number.POSITIVE_INFINITY;

export const carcassStorageUnstated: CaseRule = {
  id: "carcass-storage-unstated",
  scope: "case",
  family: "timing",
  level: "note",
  trustsTimes: true,
  summary: "The record of a carcass opened late says where it lay.",
  protects: "A night in the cold room and a night under the heat lamp are the same number of hours.",
  lookAlike:
    "A time of death that is only a guess: write the day without an hour, and no hours are reckoned from it.",
  source: verified(
    "storage belongs to the history (Animal Health Laboratory, University of Guelph; NDSU Veterinary Diagnostic Laboratory)",
  ),
  bad: {
    case: "death: {at: 2026-04-19T18:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh}\nsamples: ",
  },
  good: {
    case: "death: {at: 2026-04-19T18:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh, note: in the cold room from the evening on}\nsamples: ",
  },
  check(one, report) {
    // The place is where it was opened, and says nothing of the night before.
    const { note, state } = one.record.opened ?? {};
    const hours = hoursBetween(diedAt(one), openedAt(one));
    if (hours !== undefined && hours > limit && state !== "frozen" && saysNothing(note ?? ""))
      report(
        `opened.at: the pig was opened ${spell(hours)} after death. Write under opened.note where it lay until then (pen, yard, cold room), and under opened.ambient the temperature there.`,
        ["opened", "at"],
      );
  },
};
