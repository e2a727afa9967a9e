/** Every text of a record with its place. */
import type { Path } from "../cases/index.ts";

export interface PlacedText {
  readonly text: string;
  readonly path: Path;
}

export function textsIn(value: unknown, path: Path = []): PlacedText[] {
  if (typeof value === "string") return [{ text: value, path }];
  if (typeof value !== "object" || value === null) return [];
  const entries = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return entries.flatMap(([key, inside]) => textsIn(inside, [...path, key]));
}
