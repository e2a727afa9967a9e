/** The age class of a pig: as written, or as it follows from the age. */
import { type AgeClass, ageClasses } from "../../knowledge/index.ts";

/** The class of an age in days, by the limits in age-classes.yaml; undefined without an age. */
export function classOfAge(days: number | undefined): AgeClass | undefined {
  if (days === undefined) return undefined;
  for (const [id, { derive }] of Object.entries(ageClasses.classes))
    if (derive !== undefined && days >= derive[0] && days < derive[1] + 1) return id as AgeClass;
  return undefined;
}

/** Dead before it was born: the class has no age of its own. */
export const isUnborn = (ageClass: AgeClass | undefined): boolean =>
  ageClass !== undefined && ageClasses.classes[ageClass]?.derive === undefined;

/** Past the suckling class. */
export const isWeaned = (ageClass: AgeClass): boolean => (ageClasses.classes[ageClass]?.derive?.[0] ?? 0) > 0;
