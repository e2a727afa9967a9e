import { formatPath, quantity } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import { entriesOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const organWeightImplausible: CaseRule = {
  id: "organ-weight-implausible",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "The weight of an organ is a believable share of the pig’s.",
  protects: "Grams typed as kilograms, or the neighbour’s spleen, show here first.",
  lookAlike:
    "A placenta up to the weight of its fetus and a uterus in pig are passed; a spleen ten times its size: accept the finding, after a look at g and kg.",
  source: plausible.source,
  bad: { case: "lymphoid: {spleen: {state: normal, weight: 3.8 kg}}" },
  good: { case: "lymphoid: {spleen: {state: normal, weight: 38 g}}" },
  check(one, report) {
    const { weightKg } = one;
    if (weightKg === undefined) return;
    for (const { organ, state, entry } of entriesOf(one)) {
      const { weight } = entry;
      const kg = weight === undefined ? undefined : quantity("mass", weight);
      if (kg === undefined) continue;
      const isWhole = state.path.length === 2;
      const [low, high] = plausible.organ_share[organ.id] ?? [0, plausible.any_organ_share];
      const share = (100 * kg) / weightKg;
      if (share > high || (isWhole && share < low))
        report(
          `${formatPath([...state.path, "weight"])}: ${weight} is ${Number(share.toPrecision(2))} % of a pig of ${one.record.pig?.weight}. Check g and kg, organ and tag.`,
          [...state.path, "weight"],
        );
    }
  },
};
