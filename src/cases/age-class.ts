/** The age class of a pig: as written, or as it follows from the age. */
import { type AgeClass, ageClasses } from "../knowledge/index.ts";

/** The class of an age in days, by the limits in age-classes.yaml; undefined without an age. */
export function classOfAge(days: number | undefined): AgeClass | undefined {
  if (days === undefined) return undefined;
  for (const [id, { derive }] of Object.entries(ageClasses.classes))
    if (derive !== undefined && days >= derive[0] && days < derive[1] + 1) return id as AgeClass;
  return undefined;
}
