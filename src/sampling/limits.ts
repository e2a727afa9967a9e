/** The limits of autolysis that hold for a case: those that ship, with those of its settings. */
import { type Case, quantity } from "../cases/index.ts";
import { type AutolysisBand, autolysis, plausible } from "../knowledge/index.ts";
import { fact } from "../record/index.ts";

export interface Band extends AutolysisBand {
  readonly id: string;
}

/** The temperature band of the place where the carcass lay; undefined without a temperature that can be. */
export const bandOf = fact((one: Case): Band | undefined => {
  const degrees = quantity("temperature", one.record.opened?.ambient);
  const [coldest, hottest] = plausible.ambient;
  if (degrees === undefined || degrees < coldest || degrees > hottest) return undefined;
  for (const [id, band] of Object.entries(autolysis.bands))
    if (band.up_to === undefined || degrees <= band.up_to) return { id, ...band };
  return undefined;
});

/** Hours within which a kind of test keeps its full worth. */
export function limitHours(one: Case, band: Band, kind: string): number | undefined {
  return one.settings.autolysis[band.id]?.[kind] ?? quantity("duration", autolysis.limits[band.id]?.[kind]);
}
