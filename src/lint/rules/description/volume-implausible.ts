import { type Case, formatPath } from "../../../cases/index.ts";
import { type PlacedOrgan, plausible } from "../../../knowledge/index.ts";
import { findingsOf, volumeMl } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const volumeImplausible: CaseRule = {
  id: "volume-implausible",
  scope: "case",
  family: "description",
  level: "error",
  summary: "A fluid is not a great part of the pig, and in the nose no more than it can hold.",
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
    for (const { organ, finding, path } of findingsOf(one)) {
      const volume = volumeMl(finding);
      const { share, ml } = plausible.fluid_of[organ.id] ?? { share: plausible.fluid_share, ml: undefined };
      const most = Math.min(
        weightKg === undefined ? Number.POSITIVE_INFINITY : weightKg * 10 * share,
        ml ?? Number.POSITIVE_INFINITY,
      );
      if (volume !== undefined && volume > most)
        report(
          `${formatPath([...path, "volume"])}: ${finding.volume} ${where(one, organ, ml !== undefined)}. Check ml and l.`,
          [...path, "volume"],
        );
    }
  },
};

/** `in a pig of 12 kg`, and for an organ that holds little its name before it. */
function where({ record }: Case, { definition }: PlacedOrgan, small: boolean): string {
  const weight = record.pig?.weight;
  const pig = weight === undefined ? "of a pig" : `in a pig of ${weight}`;
  return small ? `from ${definition.title.toLowerCase()} ${pig}` : pig;
}
