/** The one pen or litter that all ill pigs of a visit come from. */
import type { Visit } from "../cases/index.ts";
import { selectionRules } from "../knowledge/index.ts";
import { plainName } from "./plain-name.ts";
import { clinicalPigs } from "./syndromes.ts";

export interface Origin {
  readonly name: string;
  readonly pigs: number;
}

/** @returns undefined with too few pigs, with more than one origin, with unknown ones, or where the visit says why */
export function oneOrigin(visit: Visit, kind: "pen" | "litter"): Origin | undefined {
  const pigs = clinicalPigs(visit);
  if (!visit.complete || visit.record.pigs?.few !== undefined) return undefined;
  if (pigs.length < selectionRules.pigs_per_syndrome) return undefined;
  const places = new Map<string, string>();
  for (const { record } of pigs) {
    const place = record.pig?.[kind];
    const group = record.pig?.group;
    if (place === undefined || (kind === "pen" && group === undefined)) return undefined;
    // A room of one pen gives no choice.
    if (kind === "pen" && visit.farm?.record.groups?.[group ?? ""]?.pens === 1) return undefined;
    const written = kind === "pen" ? `${place} of ${group}` : `${place}`;
    const name = plainName(written);
    places.set(name, places.get(name) ?? written);
  }
  const [name] = places.values();
  return places.size === 1 && name !== undefined ? { name, pigs: pigs.length } : undefined;
}
