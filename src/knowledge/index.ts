/**
 * The domain knowledge that ships with the program, read from the YAML files beside this one.
 * Nothing here decides anything: it only makes the data easy to look up.
 */

import type { Language } from "../generated/knowledge/languages.ts";
import * as data from "../generated/knowledge.ts";
import type {
  AgeClass,
  AlarmPattern,
  AlarmSign,
  Anatomy,
  Fact,
  Indicator,
  IntervalSource,
  Organ,
  Protocol,
  SampleSet,
  Sex,
  Source,
} from "../generated/knowledge.types.ts";
import { capital } from "../words/listing.ts";

export type {
  AgeClass,
  AlarmExample,
  AlarmPattern,
  AlarmSign,
  AutolysisBand,
  AutolysisKind,
  ChoosingPigs,
  ChoosingRule,
  ClassLimit,
  Condition,
  Fact,
  HerdExample,
  HerdIndex,
  ImpossibleFinding,
  ImpossibleSample,
  Indicator,
  IntervalSource,
  Measure,
  Observation,
  Organ,
  PartCondition,
  Process,
  Protocol,
  PublishedAgreement,
  SampleSet,
  Scale,
  ScaleExample,
  ScalePart,
  ScaleReference,
  SetMates,
  SetOnce,
  SetSample,
  Sex,
  Source,
  WantedFinding,
  WantedWords,
} from "../generated/knowledge.types.ts";
export * from "./report-sections.ts";

/** An organ with its place in the body: id is `system.organ`, as in a case file. */
export interface PlacedOrgan {
  readonly id: string;
  readonly system: string;
  readonly key: string;
  /** Where it stands in a case file: system, key. */
  readonly path: readonly [string, string];
  /** Its place in the order of the anatomy, counted from 0. */
  readonly index: number;
  readonly definition: Organ;
}

/** Systems in the order of the anatomy file: id, title. */
export const systems: readonly { readonly id: string; readonly title: string }[] = Object.entries(
  data.anatomy.systems,
).map(([id, system]) => ({ id, title: system.title }));

/** Every organ, in the order of the anatomy file. */
export const organs: readonly PlacedOrgan[] = placeOrgans(data.anatomy);

const organsById = new Map(organs.map((organ) => [organ.id, organ]));

/** The organ with this id (`respiratory.lungs`), if there is one. */
export const organById = (id: string): PlacedOrgan | undefined => organsById.get(id);

/** What an organ is called on paper: its title, in a language that notes know the first of its names there. */
export function organTitle(id: string, language: Language): string {
  const { title, names } = organById(id)?.definition ?? {};
  const known: Readonly<Partial<Record<string, readonly string[]>>> = { ...names, en: undefined };
  const [name] = known[language] ?? [];
  return name === undefined ? (title ?? id) : capital(name);
}

/** Title of a system, or its id when it has none. */
export const systemTitle = (id: string): string => data.anatomy.systems[id]?.title ?? id;

export const protocols: ReadonlyMap<string, Protocol> = new Map(data.protocols.map((p) => [p.id, p]));

export { measures } from "./morphometry.ts";
export { sourceLine } from "./source-line.ts";

/** By organ id, the scales under whose name a grade may be written down on the spot. */
export const recordedGrades = data.recorded_grades;
/** Organ and range of the scales that ship, by name, without the scales themselves. */
export const scaleRanges = data.scale_ranges;
/** Names of the scales that ship. */
export const scaleIds: readonly string[] = Object.keys(data.scale_ranges);

export const indicators: ReadonlyMap<string, Indicator> = new Map(Object.entries(data.indicators.indicators));
export const clinicalPredictors = new Map(Object.entries(data.clinical_predictors.predictors));
/** The look for alarm signs, by the name of the sign. */
export const alarmSigns: ReadonlyMap<string, AlarmSign> = new Map(Object.entries(data.alarm_signs.signs));

/** Facts of a case besides the organs, the look for each alarm sign among them; by their path in a case. */
export const facts: ReadonlyMap<string, Fact> = new Map([
  ...Object.entries(data.facts.facts),
  ...[...alarmSigns].map(([name, { look, asks, except, due_with }]): [string, Fact] => [
    `alarm_check.${look}.${name}`,
    {
      title: `whether you saw ${asks}`,
      write: `${name}: none`,
      due_with,
      later: look === "at_knife",
      ...(except && { except }),
    },
  ]),
]);
export const ageClasses = data.age_classes;
export const growth = data.growth;
export const description = data.description;
export const vocabulary = data.vocabulary;
export const plausible = data.plausible;
export const impossibleFindings = data.impossible_findings;
export const impossibleSamples = data.impossible_samples;
export const impossibleInLife = data.impossible_in_life;
export const partRules = data.parts;
export const diagnosisLimits = data.diagnosis_limits;
export const deathMethods = data.death_methods.methods;
export const selectionBases = data.selection_bases.bases;
export const selectionSource: Source = data.selection_bases.source;
export const selectionRules = data.selection_rules;
export const choosingPigs = data.choosing_pigs;
export const comparability = data.comparability;
export const publishedAgreement = data.published_agreement.studies;
export const fewestReadPigs = data.published_agreement.fewest_pigs;
export const intervalMethods: ReadonlyMap<string, IntervalSource> = new Map(
  Object.entries(data.intervals.methods),
);
export const clusterLimits = data.intervals.clusters;
export const denialWords = data.denial_words;
export const interpretationWords = data.interpretation_words;
export const slipWords = data.slip_words;
export const autolysis = data.autolysis;
export const sampleRules = data.sample_rules;
export const sampleCare = data.sample_care;
/** What is taken of pigs with one complaint, by id. */
export const sampleSets: ReadonlyMap<string, SampleSet> = new Map(
  data.sample_sets.map((set) => [set.id, set]),
);
/** A set that ships. @throws RangeError when there is none of that name */
export function shippedSet(id: string): SampleSet {
  const set = sampleSets.get(id);
  if (set === undefined) throw new RangeError(`no set of samples ${id}`);
  return set;
}
export const alarmPatterns: readonly AlarmPattern[] = data.alarms;
export const transportLimits = data.transport.limits;
export const transportOutside = data.transport.outside;
export const protection = data.protection;
export const snoutReadingRules = data.snout_reading;
export const alarmSignsSource: Source = data.alarm_signs.source;
export const anatomySource: Source = data.anatomy.source;
export const factsSource: Source = data.facts.source;

/** The sign families (respiratory, nervous, ...) that a list of signs belongs to, in file order. */
export function signFamilies(signs: readonly string[]): string[] {
  const found = new Set(signs.flatMap(familiesOfSign));
  return found.size < 2 ? [...found] : Object.keys(data.vocabulary.signs).filter((id) => found.has(id));
}

/** The families of one sign, in file order. */
export const familiesOfSign = (sign: string): readonly string[] => familiesBySign.get(sign) ?? [];

const familiesBySign = new Map<string, string[]>();
for (const [id, { words }] of Object.entries(data.vocabulary.signs))
  for (const word of words) familiesBySign.set(word, [...(familiesBySign.get(word) ?? []), id]);

/**
 * Whether a pig of this class and sex has the organ. An unknown class or sex excludes nothing but organs of
 * one sex: what is not known to be absent is still to be looked for.
 */
export function hasOrgan(organ: Organ, ageClass: AgeClass | undefined, sex: Sex | undefined): boolean {
  if (organ.exists !== undefined && ageClass !== undefined && !organ.exists.includes(ageClass)) return false;
  if (organ.sex !== undefined && (sex === undefined || !organ.sex.includes(sex))) return false;
  return true;
}

function placeOrgans(anatomy: Anatomy): PlacedOrgan[] {
  const all = Object.entries(anatomy.systems).flatMap(([system, { organs: inSystem }]) =>
    Object.entries(inSystem).map(([key, definition]) => ({ system, key, definition })),
  );
  return all.map(({ system, key, definition }, index) => ({
    id: `${system}.${key}`,
    system,
    key,
    path: [system, key],
    index,
    definition,
  }));
}
