import { type Case, formatPath } from "../../../cases/index.ts";
import { type AlarmSign, alarmSigns, alarmSignsSource, organById } from "../../../knowledge/index.ts";
import { looksOf, recordedFinding } from "../../../patterns/index.ts";
import type { CaseRule } from "../../rule.ts";

export const alarmCheckContradicted: CaseRule = {
  id: "alarm-check-contradicted",
  scope: "case",
  family: "alarm",
  level: "error",
  locked: true,
  summary: "The look for alarm signs and the findings say the same.",
  protects:
    "A lesion that the check denies, or a sign seen on an organ that is called normal, leaves open whether the alarm is one.",
  lookAlike:
    "A spot made by the kill or the knife, which certainty: artefact does not excuse here: write process: artefact. A sign seen on another organ is described there.",
  source: alarmSignsSource,
  bad: {
    case: "urinary:\n  bladder: [{process: petechiae, distribution: multifocal, size: 2 mm, number: 20, colour: red, severity: mild, duration: acute}]",
  },
  good: {
    case: "alarm_check: {at_knife: {petechiae: seen}}\nurinary:\n  bladder: [{process: petechiae, distribution: multifocal, size: 2 mm, number: 20, colour: red, severity: mild, duration: acute}]",
  },
  check(one, report) {
    for (const { name, answer, path } of looksOf(one)) {
      const sign = alarmSigns.get(name);
      if (sign === undefined || answer === "not-looked-at") continue;
      const [lesion] = lesionsOf(sign, one);
      if (answer === "none" && lesion !== undefined)
        report(
          `${formatPath(path)} is none, but the record has ${lesion.text}. Write seen, or correct the finding.`,
          path,
        );
      if (answer === "seen" && lesion === undefined && isCalledNormal(sign, one))
        report(
          `${formatPath(path)}: ${sign.asks} was seen, but no lesion of it is recorded and the organ is called normal. Describe it where it was, or write none.`,
          path,
        );
    }
  },
};

const lesionsOf = ({ lesions }: AlarmSign, one: Case) =>
  (lesions ?? []).flatMap((wanted) => recordedFinding(wanted, one) ?? []);

/** Some of its organs are called normal, and none has a lesion. */
function isCalledNormal({ normal }: AlarmSign, one: Case): boolean {
  const states = normal.flatMap((id) => {
    const organ = organById(id);
    return organ === undefined ? [] : [one.organ(organ)];
  });
  return (
    states.some(({ status }) => status === "normal") && states.every(({ findings }) => findings.length === 0)
  );
}
