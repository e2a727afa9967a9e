/** The example of a parcel that packaging rules start from: complete, and packed as it should be. */
type Keys = Readonly<Record<string, string>>;

const complete: Keys = {
  samples: "[01-A, 01-B]",
  sent: "2026-04-20T16:00",
  arrives: "2026-04-21T09:00",
  by: "road",
  category: "B",
  primary_leakproof: "yes",
  absorbent: "yes",
  secondary_leakproof: "yes",
  outer_rigid: "yes",
  outer_side: "200 mm",
  mark: "yes",
  mark_side: "60 mm",
  contact: '"R. Sallow, 0123 456789"',
  form: "outside-secondary",
  coolant: "cold-packs",
  coolant_place: "outside-secondary",
  formalin_apart: "yes",
};

/** A parcel of fixed tissue alone. */
export const fixedAlone: Keys = { samples: "[01-A]", formalin_apart: "", coolant: "none", coolant_place: "" };

/** A parcel of fresh tissue alone, on dry ice. */
export const onDryIce: Keys = {
  samples: "[01-B]",
  formalin_apart: "",
  coolant: "dry-ice",
  dry_ice: "2 kg",
  vented: "yes",
};

/** Parcels as YAML, each with some keys changed; an empty text takes the key out. */
export function parcelExample(...parcels: readonly Keys[]): string {
  const lines = (parcels.length === 0 ? [{}] : parcels).flatMap((changes) =>
    Object.entries({ ...complete, ...changes })
      .filter(([, value]) => value !== "")
      .map(([key, value], index) => `  ${index === 0 ? "-" : " "} ${key}: ${value}`),
  );
  return `parcels:\n${lines.join("\n")}`;
}
