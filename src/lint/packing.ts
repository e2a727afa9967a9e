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

interface CheckedVisit {
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
    const own = findings.filter(({ path }) => path.startsWith(`parcels[${index}]`));
    return { placed, findings: own, checks: checksOf(placed.parcel, own) };
  });
  const told = new Set(parcels.flatMap((parcel) => parcel.findings));
  return { parcels, besides: findings.filter((finding) => !told.has(finding)) };
}

/** The layers from within: so a parcel is packed, and so it is checked. */
const inside: readonly (keyof Parcel)[] = [
  "primary_leakproof",
  "largest_primary",
  "total_volume",
  "weight",
  "absorbent",
  "secondary_leakproof",
  "coolant_place",
  "form",
  "vented",
  "outer_rigid",
  "outer_side",
  "mark",
  "mark_side",
  "dry_ice",
  "contact",
];
const asked = packaging
  .flatMap((rule) => (rule.scope === "visit" && rule.asks !== undefined ? [{ rule, asks: rule.asks }] : []))
  .sort((a, b) => inside.indexOf(a.asks) - inside.indexOf(b.asks));

function checksOf(parcel: Parcel, findings: readonly Finding[]): ParcelCheck[] {
  const broken = new Set(findings.map(({ rule }) => rule));
  const said = asked.filter(({ rule }) => rule.concerns?.(parcel) === true);
  // Of an entry that is wrong in one way it is not told that it is right in another.
  const wrong = new Set(said.flatMap(({ rule, asks }) => (broken.has(rule.id) ? [asks] : [])));
  return said.flatMap(({ rule, asks }) => {
    const isBroken = broken.has(rule.id);
    if (wrong.has(asks) && !isBroken) return [];
    return [
      {
        rule: rule.id,
        says: textsOf(rule).summary,
        state: parcel[asks] === undefined ? "unrecorded" : isBroken ? "broken" : "kept",
      },
    ];
  });
}
