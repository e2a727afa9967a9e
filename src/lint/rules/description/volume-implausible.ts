import { formatPath } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import { findingsOf } from "../../findings-of.ts";
import { volumeMl } from "../../measure-of.ts";
import type { CaseRule } from "../../rule.ts";

export const volumeImplausible: CaseRule = {
  id: "volume-implausible",
  scope: "case",
  family: "description",
  level: "error",
  summary: "A fluid is not a great part of the pig.",
  protects: "Litres typed for millilitres turn a spoonful into a bucket.",
  source: plausible.source,
  bad: {
    case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 l, exudate: serous}]}",
  },
  good: {
    case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: serous}]}",
  },
  check(one, report) {
    const { weightKg } = one;
    if (weightKg === undefined) return;
    for (const { finding, path } of findingsOf(one)) {
      const volume = volumeMl(finding);
      if (volume !== undefined && volume > weightKg * 10 * plausible.fluid_share)
        report(
          `${formatPath([...path, "volume"])}: ${finding.volume} in a pig of ${one.record.pig?.weight}. Check ml and l.`,
          [...path, "volume"],
        );
    }
  },
};
