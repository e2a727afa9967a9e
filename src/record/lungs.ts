/** What a case records of the lungs: the per cent of each lobe that is consolidated, and which part of the lungs that is. */
import { type Case, type Path, pathOf } from "../cases/index.ts";
import { organById } from "../knowledge/index.ts";
import { fact } from "./fact.ts";
import { lesions, type PlacedFinding } from "./organs.ts";

export interface Lobes {
  readonly path: Path;
  readonly values: ReadonlyMap<string, number>;
  /** Whether every lobe has its number. */
  readonly complete: boolean;
  /** The cranial part of each caudal lobe. */
  readonly cranialParts: ReadonlyMap<string, number>;
}

/** The lobes that were graded; undefined when none was. */
export const lobes = fact((one: Case): Lobes | undefined => {
  const organ = organById("respiratory.lungs");
  const entry = organ === undefined ? undefined : one.organ(organ).entry;
  if (organ === undefined || entry === undefined) return undefined;
  const values = numbersOf(entry.consolidation);
  if (values.size === 0) return undefined;
  const parts = Object.keys(organ.definition.observations?.consolidation?.parts ?? {});
  return {
    path: [...pathOf(organ.id), "consolidation"],
    values,
    complete: parts.every((part) => values.has(part)),
    cranialParts: numbersOf(entry.caudal_cranial_part),
  };
});

const numbersOf = (value: unknown): ReadonlyMap<string, number> =>
  new Map(
    Object.entries((value ?? {}) as Record<string, unknown>).filter(
      (entry): entry is [string, number] => typeof entry[1] === "number",
    ),
  );

export interface LungRegions {
  readonly graded: Lobes;
  /** Per cent of the worst lobe. */
  readonly worst: number;
  /** Consolidation in front and below, and none in the caudal lobes. */
  readonly onlyCranioventral: boolean;
  /** Consolidation in the caudal lobes, none in their cranial parts and none in front of them. */
  readonly onlyCaudal: boolean;
}

const caudal = ["left_caudal", "right_caudal"];

/** Which part of the lungs is consolidated; undefined when a lobe has no number. */
export const lungRegions = fact((one: Case): LungRegions | undefined => {
  const graded = lobes(one);
  if (graded === undefined || !graded.complete) return undefined;
  const ill = [...graded.values].filter(([, value]) => value > 0).map(([name]) => name);
  const ofCaudal = ill.filter((name) => caudal.includes(name));
  return {
    graded,
    worst: Math.max(...graded.values.values()),
    onlyCranioventral: ill.length > 0 && ofCaudal.length === 0,
    onlyCaudal:
      ill.length > 0 &&
      ofCaudal.length === ill.length &&
      ["left", "right"].every((side) => graded.cranialParts.get(side) === 0),
  };
});

/** The findings of consolidation in the lungs. */
export const consolidations = fact((one: Case): readonly PlacedFinding[] =>
  lesions(one, { processes: ["consolidation"], organs: ["respiratory.lungs"] }),
);
