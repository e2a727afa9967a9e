import { callWhom, openAlarms } from "../../../alarms/index.ts";
import { formatPath } from "../../../cases/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const alarmSignRecorded: CaseRule = {
  id: "alarm-sign-recorded",
  scope: "case",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "A sign that may be a notifiable disease stops the examination until the competent veterinary authority has released or excluded it.",
  protects:
    "Vesicles, haemorrhages, a swollen throat or bloody orifices may be foot-and-mouth disease, a swine fever or anthrax: people, herds and a country are at stake.",
  lookAlike:
    "Livor and cyanosis are no haemorrhage of the skin, and bloody froth is no bleeding from an orifice: answer none and describe them; what is in doubt stays seen.",
  source: verified(
    "duty to report on suspicion: GB guidance on submitting farm animals for post-mortem; Decision 2000/428/EC (vesicular diseases); local law rules",
  ),
  bad: {
    case: "alarm_check: {before_knife: {throat_swelling: seen}}\nexternal: {subcutis: {not_examined: left closed on suspicion}}",
  },
  good: {
    case: "alarm_check: {before_knife: {throat_swelling: seen}}\nexternal: {subcutis: {not_examined: left closed on suspicion}}\nauthority: [{at: 2026-04-22, stands: excluded, for: [throat-oedema-or-bloody-orifices], sample: culture of the neck node}]",
  },
  check(one, report) {
    const told = new Set<string>();
    for (const { evidence } of openAlarms(one)) {
      // Where a finding says the same, one error is enough.
      if (evidence.some(({ path }) => path[0] !== "alarm_check")) continue;
      for (const { path, text } of evidence) {
        if (told.has(text)) continue;
        told.add(text);
        report(
          `${formatPath(path)}: ${text.slice("seen: ".length)} was seen. This may be a notifiable disease. STOP: do not cut on, move no pigs, people or samples, close the carcass, and call ${callWhom(one.settings)} now. Record the call under authority: [{at: …, reached: …, stands: reported}].`,
          path,
        );
      }
    }
  },
};
