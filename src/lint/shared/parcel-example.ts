/** The example of a parcel that packaging rules start from: complete, and packed as it should be. */
const complete: Readonly<Record<string, string>> = {
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

/** One parcel as YAML, with some keys changed; an empty text takes the key out. */
export function parcelExample(changes: Readonly<Record<string, string>> = {}): string {
  const keys = Object.entries({ ...complete, ...changes }).filter(([, value]) => value !== "");
  return `parcels:\n${keys.map(([key, value], index) => `  ${index === 0 ? "-" : " "} ${key}: ${value}`).join("\n")}`;
}
