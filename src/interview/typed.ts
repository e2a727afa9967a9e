/** What was typed, as the format writes it: a bare number gets the unit that the question named, a clock time its day. */
import { type Case, type Path, valueAt } from "../cases/index.ts";
import { organById } from "../knowledge/index.ts";

/** Units that a question names, by its field. */
const units: Readonly<Record<string, string>> = {
  weight: "kg",
  crown_rump: "cm",
  ambient: "°C",
  extent: "%",
  size: "mm",
  volume: "ml",
};

export function typedValue(one: Case, path: Path, typed: string): unknown {
  const field = String(path.at(-1));
  if (field === "at") return onDay(one, typed);
  const text = /^-?\d+,\d{1,2}$/.test(typed) ? typed.replace(",", ".") : typed;
  const kind = observed(path);
  const isNumber = /^-?\d+(?:\.\d+)?$/.test(text);
  if (isNumber && (kind === "percent" || kind === "grade" || kind === "count" || field === "number"))
    return Number(text);
  const unit = kind === "length" || kind === "signed-length" ? "mm" : units[field];
  const isBare = isNumber || (field === "size" && /^\d+(?:\.\d+)?(?: x \d+(?:\.\d+)?)+$/.test(text));
  return unit !== undefined && isBare ? `${text.replace(/^0+(?=\d)/, "")} ${unit}` : text;
}

/** What kind of observation stands at a path; undefined for anything else. */
function observed([system, organ, key]: Path): string | undefined {
  return organById(`${system}.${organ}`)?.definition.observations?.[String(key)]?.kind;
}

/** `0910` and `9:10` are of the day of the visit, or of the day of what happened before. */
function onDay(one: Case, text: string): string {
  const [, hour, minute] = /^(\d{1,2})[:.]?(\d{2})$/.exec(text) ?? [];
  const day = [one.visit?.record.date, valueAt(one.record, ["death", "at"])]
    .map((moment) => (typeof moment === "string" ? moment.slice(0, 10) : undefined))
    .find((moment) => moment !== undefined);
  return hour === undefined || day === undefined ? text : `${day}T${hour.padStart(2, "0")}:${minute}`;
}
