/** The quantity or date that somebody meant who wrote it another way: 8 weeks, 17,5 kg, 14.03.2026. */
import { slipWords } from "../../knowledge/index.ts";
import { moment } from "../model/moment.ts";

/**
 * What was probably meant, in a form that one of the patterns accepts.
 * @returns undefined when nothing can be told for sure; an unknown or missing unit is never guessed
 */
export function suggestion(value: string | number, patterns: readonly string[]): string | undefined {
  const text = String(value).trim();
  if (text.length > 60) return undefined;
  const tried = [...quantities(text), ...moments(text)];
  const accepted = patterns.map((pattern) => new RegExp(pattern, "u"));
  return tried.find((one) => one !== value && accepted.some((pattern) => pattern.test(one)));
}

function quantities(text: string): string[] {
  const number = /^-?\d+(?:[.,]\d+)?(?:\s*[x×*]\s*\d+(?:[.,]\d+)?)*/i.exec(text)?.[0] ?? "";
  const unit = text.slice(number.length).trimStart().replace(/\.$/, "");
  if (number === "" || unit === "") return [];
  const digits = number.replaceAll(",", ".").replaceAll(/\s+/g, "").replaceAll(/[x×*]/gi, " x ");
  const lower = unit.toLowerCase();
  const known = Object.entries(slipWords.units)
    .filter(([name, others]) => name.toLowerCase() === lower || lower === `${name}s` || begins(lower, others))
    .map(([name]) => `${digits} ${name}`);
  return [`${digits} ${unit}`, ...known, ...converted(digits, lower), ...celsius(digits, lower)];
}

/** Whether a unit is written with one of these beginnings: weeks, Wochen; `in` and other short ones are the whole word. */
function begins(unit: string, beginnings: readonly string[]): boolean {
  const text = unit.normalize("NFD").replaceAll(/[\u0300-\u036f]/g, "");
  return beginnings.some(
    (one) =>
      text === one ||
      text === `${one}s` ||
      (one.length > 2 && text.startsWith(one) && /^\p{L}*$/u.test(text.slice(one.length))),
  );
}

/** The same in a unit of the format, about as exact as it was written. */
function converted(digits: string, unit: string): string[] {
  return Object.entries(slipWords.converted)
    .filter(([, { written }]) => begins(unit, written))
    .map(([name, { times }]) => {
      const numbers = digits.split(" x ").map((number) => {
        const value = Number(number) * times;
        const decimals = number.split(".")[1]?.length ?? 0;
        return Number(value.toFixed(value < 5 ? Math.max(decimals, 1) : decimals));
      });
      return `${numbers.join(" x ")} ${name}`;
    });
}

/** Degrees Fahrenheit to a tenth of a degree Celsius. */
function celsius(digits: string, unit: string): string[] {
  if (!/^°?\s?f(ahrenheit)?$/.test(unit.replace("deg", "°")) || digits.includes("x")) return [];
  return [`${Math.round(((Number(digits) - 32) * 50) / 9) / 10} °C`];
}

function moments(text: string): string[] {
  const match =
    /^(\d{1,4})([./-])(\d{1,2})\2(\d{1,4})(?:(?:\s*[T,]\s*|\s+)(\d{1,2})[:.](\d{2}))?(?:\s*h)?$/i.exec(text);
  const [, first, sign, second, third, hour, minute] = match ?? [];
  if (first === undefined || second === undefined || third === undefined) return [];
  const day = dayOf(first, sign, second, third);
  if (day === undefined || moment(day) === undefined) return [];
  if (hour === undefined) return [day];
  const withTime = `${day}T${hour.padStart(2, "0")}:${minute}`;
  return moment(withTime) === undefined ? [] : [withTime, day];
}

/** Year first is plain; day first only with points, or where the day can be no month. */
function dayOf(first: string, sign: string | undefined, second: string, third: string): string | undefined {
  const iso = (year: string, month: string, day: string): string =>
    `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  if (first.length === 4 && third.length <= 2) return iso(first, second, third);
  if (third.length !== 4 || first.length > 2) return undefined;
  return sign === "." || Number(first) > 12 ? iso(third, second, first) : undefined;
}
