import { formatPath, quantity } from "../../../cases/index.ts";
import { organs, plausible } from "../../../knowledge/index.ts";
import { statesOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const organWeightImplausible: CaseRule = {
  id: "organ-weight-implausible",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "The weight of an organ is a believable share of the pig.",
  protects: "Grams typed as kilograms, or the neighbour’s spleen, show here first.",
  source: plausible.source,
  bad: { case: "lymphoid: {spleen: {state: normal, weight: 3.8 kg}}" },
  good: { case: "lymphoid: {spleen: {state: normal, weight: 38 g}}" },
  check(one, report) {
    const { weightKg } = one;
    if (weightKg === undefined) return;
    for (const organ of organs)
      for (const state of statesOf(one, organ)) {
        const kg = quantity("mass", state.entry?.weight);
        if (kg === undefined) continue;
        const whole = state.path.length === 2;
        const [low, high] = plausible.organ_share[organ.id] ?? [0, plausible.any_organ_share];
        const share = (100 * kg) / weightKg;
        if (share > high || (whole && share < low))
          report(
            `${formatPath([...state.path, "weight"])}: ${state.entry?.weight} is ${Number(share.toPrecision(2))} % of a pig of ${one.record.pig?.weight}. Check g and kg, organ and tag.`,
            [...state.path, "weight"],
          );
      }
  },
};
