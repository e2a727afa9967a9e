/** Whose a YAML file is that was met on the way through a folder: other tools keep theirs in a repository, too. */
import { systems } from "../../knowledge/index.ts";
import type { KeyedDocument } from "./read-file.ts";

/** Keys at the top of a case, each of which is enough to know one by. */
const caseKeys: ReadonlySet<string> = new Set([
  "case",
  "pig",
  "selection",
  "death",
  "opened",
  "alarm_check",
  ...systems.map((system) => system.id),
]);

/** Keys at the top of settings and of scales that no case has. */
const besideCases: ReadonlySet<string> = new Set([
  ...["rules", "scales", "level", "protocols", "indicators", "notifiable", "autolysis", "exclude", "report"],
  ...["organ", "parts", "boundary"],
]);

export type Whose = "a case" | "a visit" | "a farm" | "results" | "ours beside cases" | "another tool's";

/** Whether a file that is called results holds some, and not those of another program. */
export const isResults = ({ value }: KeyedDocument): boolean =>
  Object.keys(value).some((key) => ["results", "entries", "laboratory"].includes(key.trim().toLowerCase()));

/** Whether a key of it is one that only cases have. */
export const hasCaseKey = ({ value }: KeyedDocument): boolean =>
  Object.keys(value).some((key) => caseKeys.has(key.trim().toLowerCase()));

/** Capitals do not matter: a mistyped key is better told than passed over. */
export function whoseDocument({ value }: Pick<KeyedDocument, "value">): Whose {
  const keys = Object.keys(value).map((key) => key.trim().toLowerCase());
  if (keys.some((key) => caseKeys.has(key))) return "a case";
  if (keys.includes("visit")) return "a visit";
  if (keys.includes("farm")) return "a farm";
  if (keys.includes("results") && keys.some((key) => key === "entries" || key === "laboratory"))
    return "results";
  if (!keys.includes("format") || !isVersion.test(String(value.format))) return "another tool's";
  return keys.some((key) => besideCases.has(key)) ? "ours beside cases" : "a case";
}

/** Other tools have a `format:` as well, of names or of entries. */
const isVersion = /^\s*["']?\d/;

/** The line by which an editor finds our schemas. */
const modeline = /^[ \t]*#[ \t]*yaml-language-server:.*\b(?:case|visit|farm)\.schema\.json/m;
/** What stands before a key, the key, and what follows it; in lists as well. */
const keyLine = /^([ \t]*(?:[-?][ \t]*)*)["']?([a-z_]+)["']?[ \t]*:(.*)$/i;

/**
 * Whether a text that cannot be read as YAML is probably ours: one of our keys stands where the keys of its top stand.
 * What cannot be read must not be passed over only because it cannot be read.
 */
export function isProbablyOurs(text: string): boolean {
  if (modeline.test(text)) return true;
  const lines = text.split(/\r\n?|\n/);
  const first = lines.find((line) => /^[ \t]*(?:---[ \t]*)?[^ \t#-]/.test(line)) ?? "";
  const inBrackets = /^[ \t]*(?:---[ \t]*)?[{[]/.test(first);
  let top: number | undefined;
  for (const line of inBrackets ? text.split(/[\r\n,{[]/) : lines) {
    const [, before = "", name = "", after = ""] = keyLine.exec(line) ?? [];
    if (name === "") continue;
    top ??= before.length;
    const key = name.toLowerCase();
    const isOurs = caseKeys.has(key) || key === "visit" || key === "farm";
    if ((before.length <= top || inBrackets) && (isOurs || (key === "format" && isVersion.test(after))))
      return true;
  }
  return false;
}

/** Text of any encoding, well enough to look for keys in it: their letters are the same, but for zeros and a first mark. */
export const roughText = (bytes: Buffer): string =>
  bytes
    .toString("latin1")
    .replaceAll("\u0000", "")
    .replace(/^(?:\u00ff\u00fe|\u00fe\u00ff|\u00ef\u00bb\u00bf)+/, "");
