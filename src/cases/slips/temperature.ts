/** A body temperature without its unit, or with words: no pig lives where degrees Celsius and Fahrenheit could be mistaken. */
import { valueAt } from "../model/path.ts";

/** Degrees Celsius and Fahrenheit between which a living pig is; our own, wide. */
const scales = [
  { unit: "°C", from: 30, to: 45 },
  { unit: "°F", from: 86, to: 113 },
];

/** `41.2 °C rectal`, `> 41`, `41-42 °C`, `106 F`: the first number, with words round it. */
const written = /^[^\d-]*(\d{2,3}(?:[.,]\d+)?)(?!\d)[^\d]*(?:\d{2,3}(?:[.,]\d+)?)?[^\d]*$/u;

/** Gives the temperature of a case its unit, in place. */
export function putTemperatureRight(document: Record<string, unknown>): void {
  const { pig } = document;
  const degrees = Number(
    written.exec(String(valueAt(document, ["pig", "temperature"])))?.[1]?.replace(",", "."),
  );
  const scale = scales.find(({ from, to }) => degrees >= from && degrees <= to);
  if (scale === undefined || typeof pig !== "object" || pig === null) return;
  const celsius = scale.unit === "°C" ? degrees : Math.round(((degrees - 32) * 50) / 9) / 10;
  (pig as Record<string, unknown>).temperature = `${celsius} °C`;
}
