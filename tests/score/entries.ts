/** Complete records of every organ that has a scale, at random. */
import fc from "fast-check";
import { scales } from "../../src/knowledge/scales.ts";
import { type Json, lobes, scaleNamed } from "./pigs.ts";

export const share = fc.integer({ min: 0, max: 100 });
export const grade = fc.integer({ min: 0, max: 4 });
/** Something else on the organ, so that taking out the only grade does not leave it blank. */
const findings = fc.constant([{ process: "oedema", distribution: "diffuse" }]);
/** A grade under each scale that is only recorded. */
const graded = (place: string) =>
  fc.record(
    Object.fromEntries(
      [...scales.values()]
        .filter((scale) => scale.organ === place && scale.recorded_only !== undefined)
        .map(({ id, range: [min, max] }) => [id, fc.integer({ min, max })]),
    ),
  );
const millimetres = (min: number, max: number) => fc.integer({ min, max }).map((value) => `${value} mm`);
export const lung = fc.record({
  float: fc.constantFrom("sinks", "partly", "floats"),
  grades: graded("respiratory.lungs"),
  lesion_size: fc.record(
    Object.fromEntries(lobes.map((lobe) => [lobe, fc.constantFrom("below-coin", "coin-or-more")])),
  ),
  consolidation: fc.record(
    Object.fromEntries(lobes.map((lobe) => [lobe, share.filter((value) => value > 0)])),
  ),
  caudal_cranial_part: fc.record({ left: share, right: share }),
});
export const snouts = fc.record({
  section: fc.constantFrom("premolar-1", "between-premolars-1-2", "premolar-2"),
  left: fc.record({ dorsal: grade, ventral: grade }),
  right: fc.record({ dorsal: grade, ventral: grade }),
  septum: fc.constantFrom("straight", "slight", "marked"),
  grades: fc.record({
    "maff-1978": fc.integer({ min: 0, max: 5 }),
    "embrapa-1993": fc.integer({ min: 0, max: 3 }),
    "collins-1989-grade": fc.integer({ min: 0, max: 3 }),
    "correge-2013": fc.integer({ min: 0, max: 20 }),
  }),
  measured: fc.record({
    perimeter_ratio: fc.record({ total: fc.integer({ min: 0, max: 200 }).map((value) => value / 100) }),
    concha_area_fraction: fc.record({ total: fc.integer({ min: 0, max: 100 }).map((value) => value / 100) }),
    free_area_percent: fc.record({ total: share }),
  }),
});
export const side = fc.constantFrom("none", "cranioventral", "dorsocaudal-focal", "dorsocaudal-extensive");
const pleura = fc.record({
  pleurisy: fc.record({ left: side, right: side }),
  adhering_area: share,
  grades: graded("respiratory.pleura"),
});
const gradesOnly = (place: string) => fc.record({ findings, grades: graded(place) });
const entries: Record<string, fc.Arbitrary<Json>> = {
  "respiratory.lungs": lung,
  "respiratory.turbinates": snouts,
  "respiratory.pleura": pleura,
  "external.skin": gradesOnly("external.skin"),
  "external.feet": gradesOnly("external.feet"),
  "external.navel": gradesOnly("external.navel"),
  "urinary.kidneys": gradesOnly("urinary.kidneys"),
  "external.subcutis": gradesOnly("external.subcutis"),
  "lymphoid.superficial_inguinal_nodes": gradesOnly("lymphoid.superficial_inguinal_nodes"),
  "locomotor.joints": gradesOnly("locomotor.joints"),
  "external.snout": fc.record({ findings, brachygnathia: millimetres(-60, 100) }),
  "external.ears": fc.record({
    rim_wound: fc.record({ left: share, right: share }),
    lost: fc.record({ left: share, right: share }),
    grades: graded("external.ears"),
  }),
  "external.tail": fc.record({
    lost: share,
    wound: fc.constantFrom("none", "healed", "scratch", "open"),
    wound_size: millimetres(0, 100),
    wound_swollen: fc.constantFrom("no", "yes"),
  }),
  "cardiovascular.pericardium": fc.record({
    findings,
    pericarditis: fc.constantFrom("none", "mild", "severe"),
  }),
  "stomach.pars_oesophagea": fc.record({
    keratin: share,
    erosion: share,
    ulcer: share,
    grades: graded("stomach.pars_oesophagea"),
  }),
  "liver_pancreas.liver": fc.record({
    milk_spots: fc.integer({ min: 0, max: 1000 }),
    grades: graded("liver_pancreas.liver"),
  }),
  pig: fc.record({ condition: fc.integer({ min: 1, max: 5 }), crown_rump: millimetres(30, 300) }),
};

/** Where the source gives no grade, between three quarters and the entire lobe, there is no score. */
const nowhereUngraded = (entry: Json): Json => ({
  ...entry,
  consolidation: Object.fromEntries(
    Object.entries(entry.consolidation as Record<string, number>).map(([lobe, value]) => [
      lobe,
      value > 75 && value < 100 ? 75 : value,
    ]),
  ),
});

export const entryOf = (scale: string): fc.Arbitrary<Json> => {
  const entry = entries[scaleNamed(scale).organ];
  if (entry === undefined) throw new Error(`no arbitrary for the organ of ${scale}`);
  return scale === "madec-leneveu-2011" ? entry.map(nowhereUngraded) : entry;
};
