import { quantity } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

export const temperatureImplausible: CaseRule = {
  id: "temperature-implausible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "The body temperature is one that a living pig can have.",
  protects: "A slip here makes or hides a fever.",
  source: plausible.source,
  bad: { case: "pig: {temperature: 14.2 °C}" },
  good: { case: "pig: {temperature: 39.2 °C}" },
  check(one, report) {
    const value = quantity("temperature", one.record.pig?.temperature);
    const [low, high] = plausible.temperature;
    if (value !== undefined && (value < low || value > high))
      report(
        `pig.temperature: ${one.record.pig?.temperature} is not the temperature of a living pig (${low} to ${high} °C). Correct it, or take it out if it was measured after death.`,
        ["pig", "temperature"],
      );
  },
};
