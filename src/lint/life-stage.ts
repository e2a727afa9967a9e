/** Before birth, around it, or grown: what the age classes say of it by the ages they are derived from. */
import { type AgeClass, ageClasses } from "../knowledge/index.ts";

/** Dead before it was born: the class has no age of its own. */
export const isUnborn = (ageClass: AgeClass): boolean => ageClasses.classes[ageClass]?.derive === undefined;

/** Past the suckling class. */
export const isWeaned = (ageClass: AgeClass): boolean => (ageClasses.classes[ageClass]?.derive?.[0] ?? 0) > 0;
