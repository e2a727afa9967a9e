/** What holds of settings with a fault: nothing but whom to call and what the country's list adds, where that can be read. */
import { alarmPatterns } from "../../knowledge/index.ts";
import { nearest } from "../../words/nearest.ts";
import { valueAt } from "../model/path.ts";
import { defaultSettings, type Settings } from "./settings.ts";

/**
 * The defaults, with the authority and the listed alarm patterns as far as they are legible: a slip in another line must
 * not hide the telephone number in an emergency.
 * @param value the document, whatever is in it
 */
export function legibleSettings(value: unknown): Settings {
  const name = textAt(value, "name");
  const listed = [entryOf(value, "notifiable")]
    .flat()
    .map((one) => (typeof one === "string" ? nearest(one, patterns) : undefined));
  return {
    ...defaultSettings,
    authority: name === undefined ? undefined : { name, telephone: textAt(value, "telephone") },
    notifiable: patterns.filter((id) => listed.includes(id)),
  };
}

const patterns = alarmPatterns.map(({ id }) => id);

/** The value of a key, in whatever case it is written. */
function entryOf(value: unknown, key: string): unknown {
  if (typeof value !== "object" || value === null) return undefined;
  const written = Object.keys(value).find((one) => one.toLowerCase() === key);
  return written === undefined ? undefined : valueAt(value, [written]);
}

/** A number without its quotes has lost its zero and is not told. */
function textAt(value: unknown, key: "name" | "telephone"): string | undefined {
  const text = entryOf(entryOf(value, "authority"), key);
  return typeof text === "string" && text.trim() !== "" ? text : undefined;
}
