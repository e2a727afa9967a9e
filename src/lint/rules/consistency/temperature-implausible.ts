import { quantity } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

export const temperatureImplausible: CaseRule = {
  id: "temperature-implausible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary:
    "The body temperature is one that a living pig can have, and the ambient temperature one that a carcass can lie in.",
  protects:
    "A slip in the one makes or hides a fever; a slip in the other decides what every sample is still worth.",
  lookAlike:
    "A dying pig that had cooled to 33 °C is passed. A carcass measured after death: take the figure out, or write it in a note.",
  source: plausible.source,
  bad: { case: "pig: {temperature: 14.2 °C}" },
  good: { case: "pig: {temperature: 39.2 °C}" },
  check(one, report) {
    const value = quantity("temperature", one.record.pig?.temperature);
    const [low, high] = one.ageClass === "suckling" ? plausible.temperature_suckling : plausible.temperature;
    if (value !== undefined && (value < low || value > high))
      report(
        `pig.temperature: ${one.record.pig?.temperature} is not the temperature of a living pig (${low} to ${high} °C). Correct it, or take it out if it was measured after death.`,
        ["pig", "temperature"],
      );
    const ambient = quantity("temperature", one.record.opened?.ambient);
    const [coldest, hottest] = plausible.ambient;
    if (ambient !== undefined && (ambient < coldest || ambient > hottest))
      report(
        `opened.ambient: ${one.record.opened?.ambient} is hard to believe; ${coldest} to ${hottest} °C would fit (from memory, wide on purpose). Check the decimal point; it is the temperature of the air where the carcass lay.`,
        ["opened", "ambient"],
      );
  },
};
