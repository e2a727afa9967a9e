/** The parcels of a visit held against the rules of packaging: what each keeps, breaks, or does not say. */
import type { Visit } from "../cases/index.ts";
import { type Parcel, type PlacedParcel, parcelsOf } from "../record/index.ts";
import type { Finding } from "./finding.ts";
import { lintCases } from "./lint.ts";
import { textsOf } from "./rule-texts.ts";
import { rules } from "./rules/index.ts";

export interface ParcelCheck {
  readonly rule: string;
  /** What the rule asks for, in its own words. */
  readonly says: string;
  readonly state: "kept" | "broken" | "unrecorded";
}

export interface CheckedParcel {
  readonly placed: PlacedParcel;
  readonly checks: readonly ParcelCheck[];
  readonly findings: readonly Finding[];
}

export interface CheckedVisit {
  readonly parcels: readonly CheckedParcel[];
  /** About samples that are in no parcel. */
  readonly besides: readonly Finding[];
}

const packaging = rules.filter(({ family }) => family === "packaging");

/** What lint says of a visit's parcels, and what it looked at. @param visit may be another than was read, with other parcels */
export function checkedParcels(visit: Visit): CheckedVisit {
  const { findings } = lintCases(
    {
      cases: visit.cases,
      visits: [visit],
      farms: [],
      scales: [],
      unreadable: [],
      passedOver: [],
      pathsWithoutCases: [],
    },
    { only: packaging.map(({ id }) => id) },
  );
  const parcels = parcelsOf(visit).map((placed, index) => {
    const own = findings.filter(({ path }) => new RegExp(`^parcels\\[${index}\\]`).test(path));
    return { placed, findings: own, checks: checksOf(placed.parcel, own) };
  });
  const told = new Set(parcels.flatMap((parcel) => parcel.findings));
  return { parcels, besides: findings.filter((finding) => !told.has(finding)) };
}

const checksOf = (parcel: Parcel, findings: readonly Finding[]): ParcelCheck[] =>
  packaging.flatMap((rule) => {
    if (rule.scope !== "visit" || rule.asks === undefined || rule.concerns?.(parcel) !== true) return [];
    const isBroken = findings.some((finding) => finding.rule === rule.id);
    const isSaid = parcel[rule.asks] !== undefined;
    return [
      {
        rule: rule.id,
        says: textsOf(rule).summary,
        state: isBroken ? "broken" : isSaid ? "kept" : "unrecorded",
      },
    ];
  });
