/** Before birth, around it, or grown: what the age classes say of it by the ages they are derived from. */
import { type AgeClass, ageClasses } from "../knowledge/index.ts";

export { isUnborn } from "../cases/index.ts";

/** Past the suckling class. */
export const isWeaned = (ageClass: AgeClass): boolean => (ageClasses.classes[ageClass]?.derive?.[0] ?? 0) > 0;
