/** The per cent of each lung lobe that a case records as consolidated. */
import { type Case, type Path, pathOf } from "../cases/index.ts";
import { organById } from "../knowledge/index.ts";

export interface Lobes {
  readonly path: Path;
  readonly values: ReadonlyMap<string, number>;
  /** Whether every lobe has its number. */
  readonly complete: boolean;
  /** The cranial part of each caudal lobe. */
  readonly cranialParts: ReadonlyMap<string, number>;
}

/** @returns undefined when no lobe was graded */
export function lobes(one: Case): Lobes | undefined {
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
}

const numbersOf = (value: unknown): ReadonlyMap<string, number> =>
  new Map(
    Object.entries((value ?? {}) as Record<string, unknown>).filter(
      (entry): entry is [string, number] => typeof entry[1] === "number",
    ),
  );
