/** What is to be sampled of a pig, in the order of the knife: by its signs, age and manner of death. */
import { type Case, isUnborn } from "../cases/index.ts";
import { hasOrgan, organById, signFamilies } from "../knowledge/index.ts";
import { type NecropsyStep, necropsySteps } from "../knowledge/knife.ts";

export interface SampleWanted {
  /** An organ, or a material such as csf. */
  readonly from: string;
  readonly into: string;
  readonly for: readonly string[];
  /** In which it is taken. */
  readonly step: NecropsyStep;
}

/** Families of signs that decide about samples; a pig that died before it was born, or was found dead, needs no other sign. */
export function questionsOf({ signs, ageClass, record }: Case): ReadonlySet<string> {
  return new Set([
    ...signFamilies(signs.filter((sign) => sign !== "none")),
    ...(isUnborn(ageClass) ? ["reproductive"] : []),
    ...(record.death?.manner === "found-dead" || record.selection?.basis === "found-dead"
      ? ["sudden-death"]
      : []),
  ]);
}

/** None where the protocol does not go by the signs of the single pig, as on a slaughter line. */
export function samplesWanted(one: Case): SampleWanted[] {
  if (!one.protocol.follow_signs) return [];
  const questions = questionsOf(one);
  const taken = new Map<string, SampleWanted>();
  for (const step of necropsySteps)
    for (const { from, into, for: tests, signs } of step.samples) {
      const isAsked = signs?.some((family) => questions.has(family)) ?? true;
      if (!isAsked || !isThere(from, one)) continue;
      for (const container of into) {
        const key = `${from} ${container}`;
        // What was missed at its moment may still be had later: the list has it once, where it is best.
        if (!taken.has(key)) taken.set(key, { from, into: container, for: tests, step });
      }
    }
  return [...taken.values()];
}

/** An organ that this pig has; fluids and faeces of a pig that lived. */
function isThere(from: string, { ageClass, record }: Case): boolean {
  const organ = organById(from);
  return organ === undefined
    ? !isUnborn(ageClass)
    : hasOrgan(organ.definition, ageClass, record.pig?.sex ?? undefined);
}
