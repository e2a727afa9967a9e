/** What is wrong with a value, and what to write instead. */
import type { ErrorObject } from "ajv";
import { listing } from "../../words/listing.ts";
import { intendedWord } from "./intended-word.ts";
import { organShape } from "./organ-shape.ts";
import { longText, shown } from "./shown.ts";
import { suggestion } from "./suggestion.ts";

type Schema = NonNullable<ErrorObject["parentSchema"]>;

/** Longer word lists are not printed when one of their words is near. */
const longList = 12;

/**
 * One sentence or two for all that a schema says against one value.
 * @param errors the errors at this place, of every alternative
 */
export function valueMessage(value: unknown, errors: readonly ErrorObject[]): string {
  if (value === null || value === undefined) return "it is left blank; write it, or take the line out.";
  const keywords = new Set(errors.map(({ keyword }) => keyword));
  if (keywords.has("minItems")) return "the list is empty; write at least one entry, or take the key out.";
  if (keywords.has("uniqueItems")) return "an entry stands twice in this list; keep one.";
  if (keywords.has("minLength")) return "the text is empty; write it, or take the key out.";
  return (
    organShape(value, errors) ??
    wordMessage(value, errors) ??
    formMessage(value, errors) ??
    typeMessage(value, errors)
  );
}

/** A word that is not among those allowed. */
function wordMessage(value: unknown, errors: readonly ErrorObject[]): string | undefined {
  const listed = errors.flatMap(({ keyword, params }) =>
    keyword === "enum" ? (params.allowedValues as unknown[]) : [],
  );
  const single = errors.flatMap(({ keyword, params }) => (keyword === "const" ? [params.allowedValue] : []));
  const allowed = [...new Set([...listed, ...single].filter((word) => typeof word === "string"))];
  const number = single.find((word) => typeof word === "number");
  if (number !== undefined)
    return `${shown(value)} cannot be read here. Write ${number}${String(value) === String(number) ? ", without quotes" : ""}.`;
  if (typeof value === "string" && / - |;/.test(value))
    return `${shown(value)} is read as one text. ${value.includes(";") ? "Write a comma between two entries" : "Line up the hyphens of a list below each other"}.`;
  const organ = typeof value === "string" ? organIn(allowed, value) : undefined;
  const guess = organ ?? (typeof value === "string" ? intendedWord(value, allowed) : undefined);
  if (listed.length === 0)
    return guess === undefined
      ? undefined
      : `${shown(value)} is not a word known here. Did you mean ${guess}?`;
  const list =
    allowed.length > longList && guess !== undefined ? "a word known here" : `one of ${printed(allowed)}`;
  const other = guess === undefined ? otherForm(errors) : undefined;
  const help =
    guess === undefined ? (other === undefined ? "" : ` Or write ${other}.`) : ` Did you mean ${guess}?`;
  return `${shown(value)} is not ${list}.${help}`;
}

/** `respiratory.lungs` of `lungs` or `lung`. */
function organIn(allowed: readonly string[], written: string): string | undefined {
  const byKey = new Map(allowed.flatMap((id) => (id.includes(".") ? [[id.replace(/^.*\./, ""), id]] : [])));
  const key = intendedWord(written, [...byKey.keys()]);
  // `all` is near to `tail` and does not mean it.
  return key?.startsWith(written.charAt(0).toLowerCase()) ? byKey.get(key) : undefined;
}

/** Organs stand for themselves behind their systems. */
function printed(allowed: readonly string[]): string {
  const words = allowed.filter((word) => !word.includes("."));
  const example = words.length < allowed.length ? ", or an organ such as respiratory.lungs" : "";
  return `${words.join(", ")}${example}`;
}

/** The alternative to a word list, as an example. */
function otherForm(errors: readonly ErrorObject[]): string | undefined {
  const examples = errors.find(({ keyword }) => keyword === "anyOf")?.parentSchema?.examples;
  return (examples as unknown[] | undefined)?.map(inBraces).find((one) => one !== undefined);
}

/** `{with: amoxicillin by mouth, last: 12 h}`; undefined for anything but keys and values. */
function inBraces(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const entries = Object.entries(value).map(([key, one]) => `${key}: ${one}`);
  return `{${entries.join(", ")}}`;
}

/** A text of a certain form: a quantity, a date, an id. */
function formMessage(value: unknown, errors: readonly ErrorObject[]): string | undefined {
  const forms = errors.flatMap(({ parentSchema }) =>
    parentSchema?.pattern === undefined ? [] : [parentSchema],
  );
  const form = forms[0];
  if (form === undefined || (typeof value !== "string" && typeof value !== "number"))
    return form === undefined ? undefined : `${shown(value)} cannot be read here. ${formHint(form)}`;
  const whole = errors.find(({ keyword }) => keyword === "anyOf")?.parentSchema;
  const hint = formHint(whole?.description === undefined ? form : whole);
  if (
    typeof value === "number" &&
    forms.some(({ pattern }) => new RegExp(String(pattern), "u").test(`${value}`))
  )
    return `${value} is read as a number. Write it in quotes: "${value}".`;
  const patterns = forms.map((one) => String(one.pattern));
  const intended = suggestion(value, patterns) ?? joined(value, patterns);
  if (intended !== undefined) return `${shown(value)} cannot be read. Did you mean ${intended}? ${hint}`;
  const unit = / unit|per cent|parts per|degrees|milligrams/.test(String(form.description));
  const bare = unit && /^-?\d+([.,]\d+)?$/.test(String(value));
  return bare ? `${shown(value)} has no unit. ${hint}` : `${shown(value)} cannot be read. ${hint}`;
}

/** `nursery-2` from `Nursery 2`, where that is a name that can stand here. */
function joined(value: string | number, patterns: readonly string[]): string | undefined {
  const name = String(value).trim().toLowerCase().replaceAll(/\s+/g, "-");
  const isName = /^[a-z][a-z0-9._-]*$/.test(name) && name !== value;
  return isName && patterns.some((pattern) => new RegExp(pattern, "u").test(name)) ? name : undefined;
}

function formHint({ description, examples }: Schema): string {
  const what = typeof description === "string" ? description : "it in another form";
  const example = (examples as unknown[] | undefined)?.find((one) => typeof one === "string");
  const named = example === undefined || what.includes(String(example)) ? "" : `, such as ${example}`;
  return `Write ${what.charAt(0).toLowerCase()}${what.slice(1)}${named}.`;
}

const inQuotes = "it in quotes: ";

const typeWords: Record<string, string> = {
  string: "text",
  number: "a number",
  integer: "a whole number",
  boolean: "true or false",
};

/** A value of the wrong kind. */
function typeMessage(value: unknown, errors: readonly ErrorObject[]): string {
  const wanted = errors.filter(({ keyword }) => keyword === "type");
  const all = wanted.flatMap(({ params, parentSchema }) =>
    typeHelp(value, [params.type].flat().map(String), parentSchema ?? {}),
  );
  const quoted = all.filter((one) => one.startsWith(inQuotes));
  const help = quoted.length > 0 ? quoted : all;
  const description = errors[0]?.parentSchema?.description;
  const fallback = typeof description === "string" ? `${description}.` : "It has another form.";
  return `${shown(value)} cannot be read here. ${help.length === 0 ? fallback : `Write ${listing([...new Set(help)], "or")}.`}`;
}

function typeHelp(value: unknown, types: readonly string[], schema: Schema): string[] {
  return types.map((type) => {
    if (type === "object") return keysHelp(value, schema);
    if (type === "array") return listHelp(value, schema);
    if (type === "string" && (typeof value === "number" || typeof value === "boolean"))
      return `${inQuotes}"${value}"`;
    if (type === "string" && typeof value === "object") return "text, in quotes if there is a colon in it";
    if (type === "boolean" && typeof value === "string" && /^(yes|no)$/i.test(value))
      return /^y/i.test(value) ? "true" : "false";
    if (type === "number" || type === "integer") return numberHelp(value, type, schema);
    return typeWords[type] ?? type;
  });
}

function numberHelp(value: unknown, type: string, { minimum, maximum }: Schema): string {
  const range = minimum !== undefined && maximum !== undefined ? `, ${minimum} to ${maximum}` : "";
  const match =
    typeof value === "string" && value.length <= longText
      ? /^(-?\d+)(?:[.,](\d+))?(?!\d)(.*)$/.exec(value.trim())
      : null;
  const [, whole, decimals, rest] = match ?? [];
  const number = `${whole}${decimals === undefined ? "" : `.${decimals}`}`;
  if (/^e[+-]?\d+$/i.test(rest ?? "")) return `${typeWords[type]}${range}, without a power of ten (e)`;
  if (match === null || (type === "integer" && decimals !== undefined) || /^\s*[\d/-]/.test(rest ?? ""))
    return `${typeWords[type]}${range}`;
  if (String(value).includes(",")) return `it with a point, not a comma: ${number}`;
  return rest === "" ? `it without quotes: ${Number(number)}` : `the number alone: ${number}`;
}

function listHelp(value: unknown, { title, items }: Schema): string {
  if (title === "Findings") return "a list of findings, such as [{process: enlargement}]";
  if ((typeof value !== "string" && typeof value !== "number") || String(value).length > longText)
    return "a list: begin each entry with a hyphen (-)";
  if (String(value).startsWith("-")) return "a list: write a space after each hyphen (-)";
  const textItems = !/"(object|sample)"|\/sample"/.test(JSON.stringify(items ?? {}));
  return textItems ? `a list: [${value}]` : "a list: begin each entry with a hyphen (-)";
}

function keysHelp(value: unknown, { title, properties, description, examples }: Schema): string {
  if (title === "Finding") return "a finding as keys, such as {process: enlargement}";
  const known = Object.entries((properties ?? {}) as Record<string, { enum?: unknown[] }>);
  const holder = known.find(([, schema]) => schema.enum?.includes(value));
  if (holder !== undefined) return `{${holder[0]}: ${value}}`;
  if (known.length > 0)
    return `keys on lines of their own below it, such as ${listing(
      known.slice(0, 3).map(([key]) => `${key}:`),
      "or",
    )}`;
  const example = inBraces((examples as unknown[] | undefined)?.[0]);
  if (example !== undefined) return `keys below it, such as ${example}`;
  return `a key for each on a line of its own below it${typeof description === "string" ? ` (${description})` : ""}`;
}
