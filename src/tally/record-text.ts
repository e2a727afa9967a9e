/** A record as the text of a file: groups of plain values in braces, all else on lines of their own. */
import { isKeyed, type Keyed } from "../cases/model/path.ts";
import { type Form, type FormValue, formText } from "../cases/yaml/form.ts";

export const recordText = (record: Keyed): string => formText(form(record));

const form = (record: Keyed): Form =>
  Object.entries(record).map(([key, value]) => [key, formValue(value)] as const);

function formValue(value: unknown): FormValue {
  if (Array.isArray(value)) return value.map(String);
  if (isKeyed(value))
    return Object.values(value).some(isKeyed) ? { block: form(value) } : { flow: form(value) };
  return typeof value === "string" ? value : { word: String(value) };
}
