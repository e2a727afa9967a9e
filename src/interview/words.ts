/** Words of the vocabulary as they are typed: completed where only one goes on so, and taken by their other names. */
import { type Definition, definitions } from "../knowledge/definitions.ts";
import { grouped } from "../words/grouped.ts";

/** By another name, what the format calls it. */
const { sign, process, distribution, colour, consistency, exudate, severity } = definitions;
const lists: readonly Readonly<Record<string, Definition>>[] = [
  sign,
  process,
  distribution,
  colour,
  consistency,
  exudate,
  severity,
];
const also = grouped(
  lists.flatMap((part) =>
    Object.entries(part).flatMap(([word, { also: names = [] }]) => names.map((name) => ({ name, word }))),
  ),
  ({ name }) => name,
);

/** The words that a beginning may go on to; those whose other name begins so come last. */
export function completions(typed: string, words: readonly string[]): readonly string[] {
  const begun = typed.trim().toLowerCase().replaceAll(/\s+/g, "-");
  if (words.includes(begun)) return [begun];
  const own = words.filter((word) => word.startsWith(begun));
  if (own.length > 0 || begun === "") return own;
  const named = [...also].flatMap(([name, of]) => (name.startsWith(begun) ? of.map(({ word }) => word) : []));
  return [...new Set(named)].filter((word) => words.includes(word));
}

/** As far as all of them begin alike. */
export function commonStart([first = "", ...others]: readonly string[]): string {
  let length = first.length;
  for (const other of others) while (!other.startsWith(first.slice(0, length))) length--;
  return first.slice(0, length);
}
