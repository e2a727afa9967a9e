import { callWhom, isLifted, openAlarms } from "../../../alarms/index.ts";
import { formatPath, pathOf } from "../../../cases/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const alarmSignRecorded: CaseRule = {
  id: "alarm-sign-recorded",
  scope: "case",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "A sign that may be a notifiable disease stops the examination until the competent veterinary authority has answered.",
  protects:
    "Vesicles, haemorrhages, a swollen throat or bloody orifices may be foot-and-mouth disease, a swine fever or anthrax: people, herds and a country are at stake.",
  source: verified(
    "duty to report on suspicion: GB guidance on submitting farm animals for post-mortem; Decision 2000/428/EC (vesicular diseases); local law rules",
  ),
  bad: { case: "alarm_check: {vesicles: suspected}" },
  good: {
    case: "alarm_check: {vesicles: suspected}\nauthority: {contacted: 2026-04-20T10:20, answer: official veterinarian on the way; suspicion lifted 2026-04-22}",
  },
  check(one, report) {
    const { alarm_check: check } = (one.asIntended ?? one).record;
    if (check === undefined) return;
    const signs = Object.entries(check).filter(([, answer]) => answer !== "none");
    // A sign seen from outside can be reported before the opening, but not before the death.
    if (signs.length === 0 || isLifted(one, [])) return;
    const told = openAlarms(one).filter(({ evidence }) =>
      evidence.some(({ path }) => path[0] !== "alarm_check"),
    );
    const seenTwice = told.flatMap(({ evidence }) => evidence.map(({ path }) => formatPath(path)));
    // Where a finding says the same, one error is enough.
    for (const [sign, answer] of signs)
      if (!seenTwice.includes(`alarm_check.${sign}`))
        report(
          `alarm_check.${sign} is ${answer}: this may be a notifiable disease. STOP: do not cut on, move no pigs, people or samples, close the carcass, and call ${callWhom(one.settings)} now. Record the call under authority: {contacted: …, answer: …}.`,
          pathOf(`alarm_check.${sign}`),
        );
  },
};
