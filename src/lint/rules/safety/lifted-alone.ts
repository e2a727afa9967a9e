import { protection } from "../../../knowledge/index.ts";
import { type CaseRule, fromMemory } from "../../rule.ts";

export const liftedAlone: CaseRule = {
  id: "lifted-alone",
  scope: "case",
  family: "safety",
  level: "warning",
  summary: "A carcass over 25 kg is not lifted by one person alone.",
  protects: "A back strained over one carcass may never be right again.",
  lookAlike:
    "A carcass that was rolled, slid or tipped and never lifted: leave lifting blank, and say in safety.note how it was moved.",
  source: fromMemory("common rule of occupational safety: no lifting alone above 25 kg; from memory"),
  bad: { case: "pig: {weight: 29 kg}\nsafety: {lifting: alone, formalin: open-air}" },
  good: { case: "pig: {weight: 29 kg}\nsafety: {lifting: two-people, formalin: open-air}" },
  check(one, report) {
    const { value, unit } = protection.lift_alone;
    const { weightKg } = one;
    if (one.record.safety?.lifting === "alone" && weightKg !== undefined && weightKg > value)
      report(
        `safety.lifting: ${one.record.pig?.weight} lifted alone. Over ${value} ${unit}, use a winch or a second pair of hands.`,
        ["safety", "lifting"],
      );
  },
};
