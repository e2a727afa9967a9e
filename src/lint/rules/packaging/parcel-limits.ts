/** Limits of a parcel that a carrier takes: most liquid and tissue by air, least sides of box and mark. */
import { quantity } from "../../../cases/index.ts";
import { transportLimits } from "../../../knowledge/index.ts";
import { isMarkDue, isShipped, type Parcel, parcelsOf } from "../../../record/index.ts";
import { type VisitRule, verified } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

interface Row extends Omit<VisitRule, "scope" | "family" | "check" | "asks" | "concerns"> {
  readonly key: "largest_primary" | "total_volume" | "weight" | "outer_side" | "mark_side";
  readonly kind: "length" | "mass" | "volume";
  readonly limit: { readonly value: number; readonly unit: string };
  readonly isOutside: (parcel: Parcel, size: number, limit: number) => boolean;
  readonly says: (written: string, limit: string) => string;
}

const isTooLargeForAir: Row["isOutside"] = ({ by }, size, limit) => by === "air" && size > limit;
const isTooSmall: Row["isOutside"] = (parcel, size, limit) => size < limit && isShipped(parcel);

const refused = "The carrier refuses the parcel, or opens it and leaves it in the sun.";

const rows: readonly Row[] = [
  {
    id: "parcel-outer-too-small",
    level: "error",
    summary: "One face of the outer packaging measures at least 100 by 100 mm.",
    protects: "Smaller parcels get lost, and there is no room for the mark and the address.",
    lookAlike:
      "A small box inside a larger one: measure the outermost. A box that you carry yourself (by: hand) may be any size.",
    source: verified(
      "Swiss Expert Committee for Biosafety, transport sheet category B (one face at least 100 x 100 mm)",
    ),
    bad: { visit: parcelExample({ outer_side: "80 mm" }) },
    good: { visit: parcelExample() },
    key: "outer_side",
    kind: "length",
    limit: transportLimits.outer_side,
    isOutside: isTooSmall,
    says: (written, limit) =>
      `the largest face of the outer packaging is only ${written} wide. Use a box with a face of ${limit} by ${limit} or more.`,
  },
  {
    id: "parcel-mark-too-small",
    level: "warning",
    summary: "The sides of the UN3373 mark measure at least 50 mm.",
    protects: "A mark that cannot be read from a step away counts as missing.",
    lookAlike: "A mark measured along its diagonal or its letters: measure a side of the diamond.",
    source: verified(
      "Radboud University, packaging and shipping of dangerous goods (sides of 50 mm or more, letters of 6 mm)",
    ),
    bad: { visit: parcelExample({ mark_side: "30 mm" }) },
    good: { visit: parcelExample() },
    key: "mark_side",
    kind: "length",
    limit: transportLimits.mark_side,
    isOutside: (parcel, size, limit) => size < limit && isMarkDue(parcel),
    says: (written, limit) =>
      `the UN3373 mark has sides of only ${written}. Use one with sides of ${limit} or more, and letters of 6 mm.`,
  },
  {
    id: "air-primary-too-large",
    level: "error",
    summary: "By air no container holds more than 1 l of liquid.",
    protects: refused,
    lookAlike:
      "A large bottle that is not full: largest_primary is what it can hold, so pour it into smaller ones; by road there is no such limit.",
    source: verified("PI650 (IATA), read in packaging guides: primary receptacle at most 1 l"),
    bad: { visit: parcelExample({ by: "air", largest_primary: "1.5 l" }) },
    good: { visit: parcelExample() },
    key: "largest_primary",
    kind: "volume",
    limit: transportLimits.air_primary,
    isOutside: isTooLargeForAir,
    says: (written, limit) =>
      `a container of ${written} is too large to go by air. Split the liquid between containers of ${limit} or less, or send it by road.`,
  },
  {
    id: "air-volume-too-large",
    level: "error",
    summary: "By air a parcel holds no more than 4 l of liquid.",
    protects: refused,
    lookAlike:
      "Coolant does not count as liquid: write what the pots and tubes of this parcel hold together, and not what was taken in all.",
    source: verified(
      "PI650 (IATA), read in packaging guides: outer packaging at most 4 l, coolant not counted",
    ),
    bad: { visit: parcelExample({ by: "air", total_volume: "5 l" }) },
    good: { visit: parcelExample() },
    key: "total_volume",
    kind: "volume",
    limit: transportLimits.air_volume,
    isOutside: isTooLargeForAir,
    says: (written, limit) =>
      `${written} of liquid is too much for one parcel by air. Split it between parcels of ${limit} or less, or send it by road.`,
  },
  {
    id: "air-weight-too-large",
    level: "error",
    summary: "By air a parcel holds no more than 4 kg of solid samples.",
    protects: refused,
    lookAlike:
      "Whole organs and whole carcasses are said to be exempt: ask the carrier, and accept the finding with the answer.",
    source: verified(
      "Arizona Veterinary Diagnostic Laboratory, packaging instructions; whole organs are exempt from memory",
    ),
    bad: { visit: parcelExample({ by: "air", weight: "5 kg" }) },
    good: { visit: parcelExample() },
    key: "weight",
    kind: "mass",
    limit: transportLimits.air_weight,
    isOutside: isTooLargeForAir,
    says: (written, limit) =>
      `${written} of tissue is too much for one parcel by air. Split it between parcels of ${limit} or less, or send it by road.`,
  },
];

export const parcelLimits: readonly VisitRule[] = rows.map(
  ({ key, kind, limit, isOutside, says, ...text }) => ({
    ...text,
    scope: "visit",
    family: "packaging",
    asks: key,
    concerns: (parcel) => [0, Number.POSITIVE_INFINITY].some((size) => isOutside(parcel, size, limit.value)),
    check(visit, reportVisit) {
      for (const { parcel, name, path } of parcelsOf(visit)) {
        const written = parcel[key];
        const size = quantity(kind, written);
        if (written !== undefined && size !== undefined && isOutside(parcel, size, limit.value))
          reportVisit(`${name}: ${says(written, `${limit.value} ${limit.unit}`)}`, [...path, key]);
      }
    },
  }),
);
