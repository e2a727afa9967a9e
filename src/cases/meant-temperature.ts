/** A body temperature without its unit: no pig lives where degrees Celsius and Fahrenheit could be mistaken. */
import { valueAt } from "./path.ts";

/** Degrees Celsius and Fahrenheit between which a living pig is; our own, wide. */
const scales = [
  { unit: "°C", from: 30, to: 45 },
  { unit: "°F", from: 86, to: 113 },
];

/** Gives the temperature of a case its unit, in place. */
export function putTemperatureRight(document: Record<string, unknown>): void {
  const { pig } = document;
  const match = /^\s*(\d{2,3}(?:[.,]\d+)?)\s*°?\s*$/.exec(String(valueAt(document, ["pig", "temperature"])));
  const degrees = Number(match?.[1]?.replace(",", "."));
  const scale = scales.find(({ from, to }) => degrees >= from && degrees <= to);
  if (scale !== undefined && typeof pig === "object" && pig !== null)
    (pig as Record<string, unknown>).temperature = `${degrees} ${scale.unit}`;
}
