/** What the people at the table wore, and what they did that needs it. */
import type { Case } from "../cases/index.ts";
import { organById, protection } from "../knowledge/index.ts";

export type ProtectiveItem = NonNullable<NonNullable<Case["record"]["safety"]>["protection"]>[number];

/** Whether protection is recorded and this is not in it. A record without protection says nothing. */
export function wentWithout(one: Case, item: ProtectiveItem): boolean {
  const recorded = one.record.safety?.protection;
  return recorded !== undefined && !recorded.includes(item);
}

/** The organs that were examined and are reached with saw or axe, by the word for them. */
export function sawn(one: Case): string[] {
  if (one.ageClass !== undefined && protection.scissors.includes(one.ageClass)) return [];
  return protection.sawn.flatMap((id) => {
    const organ = organById(id);
    if (organ === undefined) return [];
    const { status } = one.organ(organ);
    return status === "normal" || status === "recorded" ? [organ.key] : [];
  });
}

/** Samples of the case in formalin. */
export const formalinSamples = (one: Case): number =>
  (one.record.samples ?? []).filter(({ into }) => into === "formalin").length;
