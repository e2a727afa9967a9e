/** The parcels of a visit: what is in each, what the rules of packaging say of it by road and by air, what stands on the outside. */
import type { Visit } from "../cases/index.ts";
import { transportOutside } from "../knowledge/index.ts";
import { type CheckedParcel, checkedParcels, type ParcelCheck } from "../lint/index.ts";
import {
  type Container,
  containersOf,
  isForLaboratory,
  isFresh,
  isShipped,
  type Parcel,
} from "../record/index.ts";

export interface ParcelSheet extends CheckedParcel {
  readonly contains: readonly Container[];
  /** What is written on it. */
  readonly outside: readonly string[];
  /** What it has to keep besides where it goes by air. */
  readonly air: readonly ParcelCheck[];
}

export interface PackedVisit {
  readonly visit: Visit;
  /** No parcel is recorded: these are how the samples could travel. */
  readonly proposed: boolean;
  readonly parcels: readonly ParcelSheet[];
  /** Containers for a laboratory that are in no parcel. */
  readonly left: readonly Container[];
  readonly besides: readonly CheckedParcel["findings"][number][];
}

/** Undefined where there is nothing to send. @param by how they travel, where another way is asked about than is recorded */
export function packedVisit(visit: Visit, by?: Parcel["by"]): PackedVisit | undefined {
  const forLaboratory = containersOf(visit).filter(({ sample }) => isForLaboratory(sample));
  const recorded = visit.record.parcels;
  const proposed = recorded === undefined;
  const parcels = (recorded ?? proposedParcels(forLaboratory)).map((one) =>
    by === undefined ? one : { ...one, by },
  );
  if (parcels.length === 0) return undefined;
  const packed = withParcels(visit, parcels);
  const { parcels: checked, besides } = checkedParcels(packed);
  const byAir = checkedParcels(
    withParcels(
      visit,
      parcels.map((one) => ({ ...one, by: "air" })),
    ),
  ).parcels;
  const byId = new Map(containersOf(visit).map((one) => [one.id, one]));
  const sent = new Set(parcels.flatMap(({ samples = [] }) => samples));
  return {
    visit,
    proposed,
    parcels: checked.map((one, index) => {
      const known = new Set(one.checks.map(({ rule }) => rule));
      return {
        ...one,
        contains: one.placed.samples.flatMap(({ id }) => byId.get(id) ?? []),
        outside: outsideOf(one.placed.parcel),
        air: (byAir[index]?.checks ?? []).filter(({ rule }) => !known.has(rule)),
      };
    }),
    left: forLaboratory.filter(({ id }) => !sent.has(id)),
    besides,
  };
}

const withParcels = (visit: Visit, parcels: readonly Parcel[]): Visit => ({
  ...visit,
  record: { ...visit.record, parcels: [...parcels] },
});

/** What is frozen on dry ice, all else together: formalin in a bag of its own, and cold packs where something is fresh. */
function proposedParcels(containers: readonly Container[]): Parcel[] {
  const frozen = containers.filter(({ into }) => into === "frozen");
  const rest = containers.filter(({ into }) => into !== "frozen");
  const fresh = rest.some(({ sample }) => isFresh(sample));
  const fixed = rest.some(({ into }) => into === "formalin");
  const ids = (some: readonly Container[]): string[] => some.map(({ id }) => id);
  return [
    ...(rest.length === 0
      ? []
      : [
          {
            samples: ids(rest),
            category: "B" as const,
            coolant: fresh ? ("cold-packs" as const) : ("none" as const),
            ...(fresh && { coolant_place: "outside-secondary" as const }),
            ...(fresh && fixed && { formalin_apart: "yes" as const }),
          },
        ]),
    ...(frozen.length === 0
      ? []
      : [
          {
            samples: ids(frozen),
            category: "B" as const,
            coolant: "dry-ice" as const,
            coolant_place: "outside-secondary" as const,
          },
        ]),
  ];
}

/** None on what a person carries, but for the name. */
function outsideOf(parcel: Parcel): string[] {
  const { to, contact, category_a: a, category_b: b, exempt, dry_ice: dryIce } = transportOutside;
  const mark = parcel.category === "A" ? a : parcel.category === "exempt" ? exempt : b;
  return [
    to,
    contact,
    ...(isShipped(parcel) ? [mark] : []),
    ...(parcel.coolant === "dry-ice" ? [dryIce] : []),
  ].map(({ write }) =>
    write
      .replace("{contact}", parcel.contact ?? "name and telephone of somebody who answers")
      .replace("{dry_ice}", parcel.dry_ice ?? "weight in kg"),
  );
}
