import { goneAlarms, unsaid } from "../../../alarms/index.ts";
import { unknownName } from "../../../cases/index.ts";
import { alarmPatterns } from "../../../knowledge/index.ts";
import { listing } from "../../../words/listing.ts";
import { type FileRule, practice } from "../../rule.ts";

export const authorityEntryIncomplete: FileRule = {
  id: "authority-entry-incomplete",
  scope: "file",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "An entry by which the authority lets you go on says for which alarm: released by whom and on what ground, or excluded on which sample.",
  protects:
    "An entry that does not say what it is about lifts no alarm; one that only looks like an answer lets samples leave a farm that should be closed.",
  lookAlike:
    "An entry that lifts nothing yet: with stands: reported neither alarm, ground nor sample is asked for.",
  source: practice(
    "common practice of veterinary authorities: restrictions stand until the authority lifts them",
  ),
  bad: { case: "authority: [{at: 2026-04-20T10:20, reached: duty officer, stands: released}]" },
  good: {
    case: "authority: [{at: 2026-04-20T10:20, reached: duty officer, stands: released, for: [vesicles], ground: official veterinarian saw healed claw wounds}]",
  },
  check({ record }, report) {
    const entries = "authority" in record ? (record.authority ?? []) : [];
    for (const [index, entry] of entries.entries()) {
      const missing = unsaid(entry);
      if (missing.length > 0)
        report(
          `authority[${index}] says ${entry.stands} and lifts no alarm yet. Write ${listing(missing.map((key) => say[key]))}.`,
          ["authority", index],
        );
      for (const [at, name] of (entry.for ?? []).entries())
        if (!names.includes(name))
          report(`authority[${index}].for: ${notAnAlarm(name)}`, ["authority", index, "for", at]);
    }
  },
};

const names = alarmPatterns.map(({ id }) => id);

function notAnAlarm(name: string): string {
  if (!Object.hasOwn(goneAlarms, name)) return unknownName(name, names, "alarm");
  const now = goneAlarms[name];
  return `the alarm "${name}" is gone; ${now === undefined ? "nothing looks for it under one name any more, so take it out and name the alarm that stands" : `${now} looks for the same. Name that one, if the authority's answer covers it`}.`;
}

const say = {
  for: "for: [the name of the alarm, as in its brackets]",
  reached: "reached: who released it",
  ground: "ground: on what ground",
  sample: "sample: which sample was negative, in which test",
} as const;
