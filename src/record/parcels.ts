/** The parcels of a visit with the samples that each names. */
import type { Case, Path, Visit } from "../cases/index.ts";
import { fact } from "./fact.ts";
import { isFromOutside, type Sample } from "./materials.ts";

export type Parcel = NonNullable<Visit["record"]["parcels"]>[number];

interface PackedSample {
  readonly id: string;
  /** Where the parcel names it. */
  readonly path: Path;
  /** The sample with its case; undefined when no case of the visit has it. */
  readonly taken: { readonly sample: Sample; readonly one: Case } | undefined;
}

export interface PlacedParcel {
  readonly parcel: Parcel;
  /** `parcel 1`, as people count. */
  readonly name: string;
  readonly path: Path;
  readonly samples: readonly PackedSample[];
}

export const parcelsOf = fact((visit: Visit): readonly PlacedParcel[] => {
  const { parcels } = visit.record;
  if (parcels === undefined) return [];
  const taken = new Map(
    visit.cases.flatMap((one) =>
      (one.record.samples ?? []).map((sample) => [sample.id, { sample, one }] as const),
    ),
  );
  return parcels.map((parcel, index) => ({
    parcel,
    name: `parcel ${index + 1}`,
    path: ["parcels", index],
    samples: (parcel.samples ?? []).map((id, at) => ({
      id,
      path: ["parcels", index, "samples", at],
      taken: taken.get(id),
    })),
  }));
});

/** The samples of a parcel that were found in a case. */
export const samplesIn = ({ samples }: PlacedParcel): Sample[] =>
  samples.map(({ taken }) => taken?.sample).filter((sample) => sample !== undefined);

/** Fresh: of the pig, and neither in formalin nor in alcohol, so it can rot and infect. */
export const isFresh = ({ from, into }: Sample): boolean =>
  into !== undefined && into !== "formalin" && into !== "ethanol" && !isFromOutside(from);

/** A yes or no as people write it; undefined when it is not recorded. */
export function answer(value: "yes" | "no" | boolean | undefined): boolean | undefined {
  if (value === undefined) return undefined;
  return value === "yes" || value === true;
}

/** A parcel that a person carries to the laboratory needs no marks of a carrier. */
export const isShipped = ({ by }: Parcel): boolean => by !== "hand";

/** Whether the mark UN3373 has to be on it. */
export const isMarkDue = (parcel: Parcel): boolean =>
  isShipped(parcel) && parcel.category !== "A" && parcel.category !== "exempt";

/** What must be said of a parcel; outer packaging and mark matter only to a carrier. */
export const packingDue = (parcel: Parcel): (keyof Parcel)[] => [
  "sent",
  "by",
  "category",
  "primary_leakproof",
  "absorbent",
  "secondary_leakproof",
  "form",
  ...(isShipped(parcel) ? (["outer_rigid"] as const) : []),
  ...(isMarkDue(parcel) ? (["mark"] as const) : []),
];

/** What needs no laboratory: it is kept, or looked at under the microscope of the practice. */
const atPractice: readonly string[] = ["archive", "cytology", "parasitology"];

export const isForLaboratory = ({ for: tests }: Pick<Sample, "for">): boolean =>
  tests?.some((test) => !atPractice.includes(test)) === true;

/** Samples for a laboratory that no parcel names. */
export const unpackedSamples = fact((visit: Visit) => {
  const packed = new Set(parcelsOf(visit).flatMap(({ samples }) => samples.map(({ id }) => id)));
  return visit.cases.flatMap((one) =>
    (one.record.samples ?? []).flatMap((sample, index) =>
      packed.has(sample.id) || !isForLaboratory(sample) ? [] : [{ one, sample, index }],
    ),
  );
});
