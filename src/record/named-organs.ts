/** What free text names: organs, by key, title or what people call them, singular or plural (generous); a side of the body. */
import type { Path } from "../cases/index.ts";
import { interpretationWords, organById, organs, type PlacedOrgan, systems } from "../knowledge/index.ts";

/** @returns the organs in the order of the anatomy; none when the text names nothing known */
export function namedOrgans(text: string): PlacedOrgan[] {
  const words = plain(text);
  const written = ` ${words} `;
  const ids = new Set<string>();
  for (const word of new Set(words.split(" ")))
    for (const { name, organs: named } of namesByFirstWord().get(word) ?? [])
      if (written.includes(` ${name} `)) for (const id of named) ids.add(id);
  return ids.size === 0 ? [] : organs.filter(({ id }) => ids.has(id));
}

/** The organs that a text about what was left closed names: `jaws` are those of the mouth, too. */
export function closedOrgans(text: string): PlacedOrgan[] {
  const named = [...namedOrgans(text), ...organsBehind(text)];
  return organs.filter((organ) => named.includes(organ));
}

/** The organs that are not seen where the part that a text names is left closed: `skull` is the brain, too. */
export function organsBehind(text: string): PlacedOrgan[] {
  const words = plain(text).split(" ");
  const behind = Object.entries(interpretationWords.closed_parts).flatMap(([part, ids]) =>
    words.includes(part) ? ids : [],
  );
  return organs.filter(({ id }) => behind.includes(id));
}

interface OrganName {
  readonly name: string;
  readonly organs: readonly string[];
}

let cached: ReadonlyMap<string, readonly OrganName[]> | undefined;

/** Every name of an organ, by its first word. */
function namesByFirstWord(): ReadonlyMap<string, readonly OrganName[]> {
  if (cached !== undefined) return cached;
  const byFirst = new Map<string, OrganName[]>();
  for (const { name: written, organs: named } of [
    ...organs.flatMap(({ id, key, definition }) =>
      [key, ...definition.title.split(/\band\b|,|:|\(|\)/)].map((name) => ({ name, organs: [id] })),
    ),
    ...systems.map(({ id, title }) => ({
      name: title,
      organs: organs.filter(({ system }) => system === id).map((organ) => organ.id),
    })),
    ...Object.entries(interpretationWords.organ_names).map(([name, ids]) => ({
      name,
      organs: ids.filter((id) => organById(id) !== undefined),
    })),
  ]) {
    const name = plain(written);
    const [first = ""] = name.split(" ");
    if (name.length > 2) byFirst.set(first, [...(byFirst.get(first) ?? []), { name, organs: named }]);
  }
  cached = byFirst;
  return byFirst;
}

/** Lower case, letters only, each word in the singular. */
function plain(text: string): string {
  return text
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== "" && word !== "its")
    .map((word) => word.replace(/ae$/, "a").replace(/(?<=..)s$/, ""))
    .join(" ");
}
/** The one side of the body that free text names: undefined when it names none, or both. */
export function namedSide(text: string | undefined): "left" | "right" | undefined {
  const left = /\bleft\b/i.test(text ?? "");
  const right = /\bright\b/i.test(text ?? "");
  if (left === right || namesBoth(text)) return undefined;
  return left ? "left" : "right";
}

/** The side under which a path lies, of a paired organ. */
export const sideInPath = (path: Path): "left" | "right" | undefined =>
  path.find((step) => step === "left" || step === "right");

/** Where a lesion or sample lies, in words: its side, and its site. */
export const whereOf = ({ side, site }: { readonly side?: string; readonly site?: string }): string =>
  [side, site].filter((text) => text !== undefined).join(" ");

/** Whether free text says that both sides are meant. */
export const namesBoth = (text: string | undefined): boolean =>
  /\b(both|bilateral|each side)\b/i.test(text ?? "") ||
  (/\bleft\b/i.test(text ?? "") && /\bright\b/i.test(text ?? ""));
