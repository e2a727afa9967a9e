/** The ids that outlines of a tracing are agreed to have. */
import { organById } from "../knowledge/index.ts";
import { nearest } from "../words/nearest.ts";

export const sides = ["left", "right"] as const;
export type Side = (typeof sides)[number];
const conchae = ["dorsal", "ventral"] as const;
type Concha = (typeof conchae)[number];

export type SnoutPart = `cavity-${Side}` | `${Concha}-${Side}` | "septum";

export const snoutParts: readonly SnoutPart[] = [
  ...sides.flatMap((side) => [`cavity-${side}`, `dorsal-${side}`, `ventral-${side}`] as const),
  "septum",
];

/** The lobes of the lung as the case format writes them: left_cranial ... accessory. */
export const lobes: readonly string[] = Object.keys(
  organById("respiratory.lungs")?.definition.observations?.consolidation?.parts ?? {},
);

const dashed = (lobe: string): string => lobe.replaceAll("_", "-");

const scaleBar = "scale-bar";

/** What an id says. */
export type Part =
  | { readonly kind: "outline"; readonly id: string }
  /** A concha of which nothing is left to draw. */
  | { readonly kind: "absent"; readonly id: string }
  | { readonly kind: "affected"; readonly id: string; readonly lobe: string }
  /** `length` as written in the id: scale-bar-10-mm. */
  | { readonly kind: "scale-bar"; readonly id: string; readonly length: string | undefined };

const outlines = new Set<string>([...snoutParts, ...lobes.map((lobe) => lobeId(lobe))]);
const absences = new Set(sides.flatMap((side) => conchae.map((concha) => `${concha}-${side}-absent`)));
const affected = new Map(lobes.map((lobe) => [`affected-${dashed(lobe)}`, lobe]));

/** Id of the outline of a lobe: `lobe-left-cranial`. */
export function lobeId(lobe: string): string {
  return `lobe-${dashed(lobe)}`;
}

/** @returns undefined for an id that belongs to no part */
export function partOf(id: string): Part | undefined {
  if (outlines.has(id)) return { kind: "outline", id };
  if (absences.has(id)) return { kind: "absent", id: id.replace(/-absent$/, "") };
  const lobe = affected.get(id.replace(/-\d+$/, ""));
  if (lobe !== undefined) return { kind: "affected", id, lobe };
  const [bar, length] = /^scale-bar(?:-(.+))?$/.exec(id) ?? [];
  return bar === undefined
    ? undefined
    : { kind: "scale-bar", id: scaleBar, length: length?.replaceAll(/[-_]/g, " ") };
}

/** The agreed id that somebody probably meant. */
export function intendedPart(id: string): string | undefined {
  // Some programs allow no hyphens, or put _1_ behind a name that was taken.
  const plain = id
    .toLowerCase()
    .replace(/_\d+_$/, "")
    .replaceAll(/[\s_]+/g, "-");
  if (partOf(plain) !== undefined) return plain;
  const number = /-\d+$/.exec(id)?.[0] ?? "";
  const base = id.slice(0, id.length - number.length);
  const intended = nearest(base, [...outlines, ...absences, ...affected.keys(), scaleBar]);
  return intended !== undefined && affected.has(intended) ? `${intended}${number}` : intended;
}
