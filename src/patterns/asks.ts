/** What a condition asks about. */
import type { Condition } from "../knowledge/index.ts";

/** The conditions in a condition that must be met. */
const wantedIn = ({ all, any, at_least: some, pigs }: Condition): readonly Condition[] => [
  ...(all ?? []),
  ...(any ?? []),
  ...(some?.of ?? []),
  ...(pigs === undefined ? [] : [pigs.with]),
];

/** Those and the ones that must not be met. */
const innerOf = (condition: Condition): readonly Condition[] => [
  ...wantedIn(condition),
  ...(condition.none ?? []),
];

/** The organs that a condition asks for, each as often as it does. */
export const organsAsked = (condition: Condition): readonly string[] => [
  ...innerOf(condition).flatMap(organsAsked),
  ...(condition.finding?.organs ?? []),
  ...(condition.grade === undefined ? [] : [condition.grade.organ]),
];

/** Whether something must be found on an organ for a condition to be met, at least in one of its ways. */
export const wantsLesion = (condition: Condition): boolean =>
  condition.finding !== undefined || condition.grade !== undefined || wantedIn(condition).some(wantsLesion);

/** Whether a condition asks for something of the herd, which a visit answers. */
export const asksHerd = (condition: Condition): boolean =>
  herdKeys.some((key) => condition[key] !== undefined) || innerOf(condition).some(asksHerd);

const herdKeys = ["deaths", "ill", "herd_signs", "several", "dry", "heat", "pigs", "alarm_check"] as const;
