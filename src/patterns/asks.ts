/** What a condition asks about. */
import type { Condition } from "../knowledge/index.ts";

/** The conditions in a condition. */
const innerOf = ({ all, any, none, at_least: some, pigs }: Condition): readonly Condition[] => [
  ...(all ?? []),
  ...(any ?? []),
  ...(none ?? []),
  ...(some?.of ?? []),
  ...(pigs === undefined ? [] : [pigs.with]),
];

/** The organs that a condition asks for, each as often as it does. */
export const organsAsked = (condition: Condition): readonly string[] => [
  ...innerOf(condition).flatMap(organsAsked),
  ...(condition.finding?.organs ?? []),
  ...(condition.grade === undefined ? [] : [condition.grade.organ]),
];

/** Whether a condition asks for something of the herd, which a visit answers. */
export const asksHerd = (condition: Condition): boolean =>
  herdKeys.some((key) => condition[key] !== undefined) || innerOf(condition).some(asksHerd);

const herdKeys = ["deaths", "herd_signs", "several", "dry", "heat", "pigs", "alarm_check"] as const;
