/** Which of the scales that ship are shown when nobody names any. */
import { dirname } from "node:path";
import type { Case } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { scales } from "../knowledge/scales.ts";
import { observation } from "./observed.ts";
import { stateFor } from "./state-for.ts";

const byDefault = (wanted: NonNullable<Scale["by_default"]>): Scale[] =>
  [...scales.values()].filter(({ by_default = "always" }) => by_default === wanted);

/**
 * The scales to show for each of these cases: those that are always shown, and those that are shown when recorded, where
 * one case of the same visit has something that they read. A scale that a normal organ does not answer, since something must
 * be measured, is shown for the cases that have it. Scales that are shown only when named are never among them.
 */
export function scalesInUse(cases: readonly Case[]): (one: Case) => readonly Scale[] {
  const always = new Set(byDefault("always"));
  const optional = byDefault("when-recorded");
  const visits = new Map<string, Set<Scale>>();
  for (const one of cases) {
    const used = visits.get(visitOf(one)) ?? new Set(always);
    visits.set(visitOf(one), used);
    for (const scale of optional) if (!used.has(scale) && isRecorded(one, scale)) used.add(scale);
  }
  return (one) => {
    const used = visits.get(visitOf(one)) ?? always;
    return [...scales.values()].filter(
      (scale) =>
        always.has(scale) || (used.has(scale) && (scale.when_normal !== undefined || isRecorded(one, scale))),
    );
  };
}

/** Cases without a visit are taken together by folder, as everywhere. */
const visitOf = (one: Case): string => one.visit?.folder ?? dirname(one.file);

/** Whether the case has something that the scale reads: an observation, or a grade under its name. */
function isRecorded(one: Case, scale: Scale): boolean {
  const { entry } = stateFor(one, scale);
  if (entry === undefined) return false;
  const reads = [`grades.${scale.id}`, ...Object.values(scale.parts).map(({ read }) => read)];
  return reads.some((read) => observation(entry, read) !== undefined);
}
