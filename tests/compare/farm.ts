/** A farm of two visits or more for the tests, made through the real reader. */
import type { Archive } from "../../src/cases/index.ts";
import { archiveOf, farm, visit } from "../herd/archive.ts";

export interface Pig {
  readonly grade: number | null;
  readonly basis?: string | null;
  readonly age?: string | null;
  readonly group?: string;
  readonly pen?: number;
  readonly examiner?: string | null;
  readonly manner?: string | null;
  readonly section?: string;
  readonly turbinates?: object;
  readonly lungs?: object;
  readonly tag?: string;
}

let made = 0;

/** A case with a snout grade; weaner of one group, drawn at random, opened at the table by one person unless said otherwise. */
export function caseOf(pig: Pig): object {
  const { basis = "random", age = "50 d", examiner = "H. Marlow", manner = "euthanised" } = pig;
  const { grade, group = "nursery-1", section = "premolar-1" } = pig;
  return {
    format: 1,
    case: `pig-${++made}`,
    ...(examiner !== null && { examiner }),
    pig: {
      group,
      ...(age !== null && { age }),
      ...(pig.pen !== undefined && { pen: pig.pen }),
      ...(pig.tag !== undefined && { tag: pig.tag }),
    },
    ...(basis !== null && { selection: { basis } }),
    ...(manner !== null && { death: { manner } }),
    respiratory: {
      turbinates:
        pig.turbinates ??
        (grade === null
          ? { not_examined: "snout left closed" }
          : { section, grades: { "maff-1978": grade } }),
      ...(pig.lungs !== undefined && { lungs: pig.lungs }),
    },
  };
}

/** Visits in the order of the keys: pigs by date. @param more of visit.yaml, by date @param settings of carcase.yaml */
export function farmOf(
  visits: Readonly<Record<string, readonly Pig[]>>,
  more: Readonly<Record<string, object>> = {},
  settings: object = {},
): Archive {
  return archiveOf({
    "carcase.yaml": { format: 1, ...settings },
    "alder/farm.yaml": farm("alder"),
    ...Object.fromEntries(
      Object.entries(visits).flatMap(([date, pigs]) => [
        [`alder/${date}/visit.yaml`, { ...visit(`alder-${date}`, date), ...more[date] }],
        ...pigs.map((pig, index) => [`alder/${date}/pig-${index}.yaml`, caseOf(pig)]),
      ]),
    ),
  });
}

/** So many pigs at grade 3 of so many, the rest at grade 0. */
export const affected = (yes: number, of: number, some: Partial<Pig> = {}): Pig[] =>
  Array.from({ length: of }, (_, index) => ({ grade: index < yes ? 3 : 0, ...some }));
