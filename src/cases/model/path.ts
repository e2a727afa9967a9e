/** Where something is in a document: keys and list positions from the top. */
export type Path = readonly (string | number)[];

/**
 * `respiratory.lungs.consolidation.left_cranial`, `samples[0].id`; the whole document is an empty string. A key that
 * could be mistaken for several or for none is put in quotes.
 */
export function formatPath(path: Path): string {
  let text = "";
  for (const step of path) {
    if (typeof step === "number") text += `[${step}]`;
    else text += `${text === "" ? "" : "."}${/^[^\s."[\]]+$/u.test(step) ? step : JSON.stringify(step)}`;
  }
  return text;
}

/** Ids are few and asked for again and again. */
const pathsOfIds = new Map<string, Path>();

/** The path of an organ or fact id such as `pig.age`. Ids have no list positions. */
export function pathOf(id: string): Path {
  const path = pathsOfIds.get(id) ?? id.split(".");
  if (pathsOfIds.size < mostIds) pathsOfIds.set(id, path);
  return path;
}

/** More than there are organs and facts; an id may come from a file. */
const mostIds = 5000;

/** Whether one path lies at or below the other, in either direction. */
export function pathsMeet(a: Path, b: Path): boolean {
  const length = Math.min(a.length, b.length);
  for (let i = 0; i < length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** The value at a path of plain data, or undefined. Inherited properties are never followed. */
export function valueAt(value: unknown, path: Path): unknown {
  let current = value;
  for (const step of path) {
    if (typeof current !== "object" || current === null || !Object.hasOwn(current, step)) return undefined;
    current = (current as Record<string | number, unknown>)[step];
  }
  return current;
}

/**
 * Puts a value at a path of plain data, in place.
 * @returns whether there was a place for it: a group of keys or a list
 */
export function put(target: object, path: Path, value: unknown): boolean {
  const last = path.at(-1);
  const parent = valueAt(target, path.slice(0, -1));
  if (last === undefined || last === "__proto__" || typeof parent !== "object" || parent === null)
    return false;
  (parent as Record<string | number, unknown>)[last] = value;
  return true;
}

/** Takes out what stands at a path of plain data, in place. A list keeps its length. */
export function remove(target: object, path: Path): void {
  const last = path.at(-1);
  const parent = valueAt(target, path.slice(0, -1));
  if (last !== undefined && typeof parent === "object" && parent !== null)
    delete (parent as Record<string | number, unknown>)[last];
}

/** A value with keys: neither a list nor nothing. */
export type Keyed = Record<string, unknown>;

export const isKeyed = (value: unknown): value is Keyed =>
  typeof value === "object" && value !== null && !Array.isArray(value);
