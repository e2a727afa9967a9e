/** What a case says of its organs: states, findings, lesions. */
import { type Case, type Finding, isUnborn, isWeaned, type OrganState, type Path } from "../cases/index.ts";
import { type Observation, organs, type PlacedOrgan, scaleRanges } from "../knowledge/index.ts";
import { fact } from "./fact.ts";

/** What is said in one place of an organ: of the organ itself, or of one of its sides. */
export interface PlacedState {
  readonly organ: PlacedOrgan;
  readonly state: OrganState;
}

/** The states of every organ that the case says anything of, and of its sides, in the order of the anatomy. */
export const placedStates = fact((one: Case): readonly PlacedState[] => {
  const placed: PlacedState[] = [];
  for (const organ of organs) {
    const state = one.organ(organ);
    if (state.status === "blank" && state.entry === undefined) continue;
    placed.push({ organ, state });
    for (const side of state.sides) placed.push({ organ, state: side.state });
  }
  return placed;
});

export interface PlacedEntry extends PlacedState {
  readonly entry: NonNullable<OrganState["entry"]>;
}

/** Those of them that are written with keys of their own, and not as one word or a bare list of findings. */
export const entriesOf = fact((one: Case): readonly PlacedEntry[] =>
  placedStates(one).flatMap(({ organ, state }) =>
    state.entry === undefined ? [] : [{ organ, state, entry: state.entry }],
  ),
);

/** The states of one organ: its own, and those of its sides. */
export function statesOf(one: Case, organ: PlacedOrgan): OrganState[] {
  const state = one.organ(organ);
  return [state, ...state.sides.map((side) => side.state)];
}

export const isOfUnborn = ({ definition }: PlacedOrgan): boolean =>
  definition.exists?.every(isUnborn) === true;

/**
 * What of a pig forbids an organ: its sex, or its class where it is weaned and the organ is of the unborn. A lesion of a
 * testis in a castrate is of one that was left in.
 */
export function forbids(one: Case, organ: PlacedOrgan): "sex" | "class" | undefined {
  const { sex: sexes } = organ.definition;
  const sex = one.record.pig?.sex;
  const isLeftIn =
    sex === "castrate" && sexes?.includes("male") === true && one.organ(organ).status === "recorded";
  if (sex !== undefined && sexes !== undefined && !sexes.includes(sex) && !isLeftIn) return "sex";
  return one.ageClass !== undefined && isWeaned(one.ageClass) && isOfUnborn(organ) ? "class" : undefined;
}

export interface PlacedFinding extends PlacedState {
  readonly finding: Finding;
  readonly path: Path;
}

/** Every finding of the case with its place, organ by organ and side by side. */
export const findingsOf = fact((one: Case): readonly PlacedFinding[] =>
  placedStates(one).flatMap(({ organ, state }) =>
    state.findings.map(({ finding, path }) => ({ organ, state, finding, path })),
  ),
);

/** `consolidation, cranioventral, dark red, firm, 13 %`: the words of the record, in the order in which people describe. */
export const findingWords = (finding: object): string =>
  describing
    .map((key) => Reflect.get(finding, key) as unknown)
    .filter((word) => word !== undefined && word !== null)
    .map((word) => (Array.isArray(word) ? word.join(", ") : String(word)))
    .join(", ")
    .replaceAll(/(?<=\p{L})-(?=\p{L})/gu, " ");

const describing = [
  "process",
  "severity",
  "duration",
  "distribution",
  "exudate",
  "colour",
  "consistency",
  "side",
  "site",
  "number",
  "size",
  "extent",
];

/** What is described on an organ but is no lesion of the living pig, unless somebody asks for it by name. */
const notOfTheLivingPig: readonly string[] = ["artefact", "autolysis"];

/**
 * Whether a finding is a lesion: not where it is called an artefact, and not what came after death (autolysis), unless
 * that is one of the processes asked for.
 */
export function isLesion({ process, certainty }: Finding, asked?: readonly string[]): boolean {
  if (certainty === "artefact") return false;
  return asked === undefined ? !notOfTheLivingPig.includes(process) : asked.includes(process);
}

/** The lesions that are called marked: they belong in the diagnosis, in the parcel and on a photograph. */
export const markedLesions = fact((one: Case): readonly PlacedFinding[] =>
  findingsOf(one).filter(({ finding }) => finding.severity === "marked" && isLesion(finding)),
);

export interface LesionQuestion {
  readonly processes: readonly Finding["process"][];
  /** Organs, or systems whole; all when left out. */
  readonly organs?: readonly string[];
}

/** The lesions of some processes, without those called artefacts. */
export function lesions(one: Case, { processes, organs: asked }: LesionQuestion): PlacedFinding[] {
  const all = findingsOf(one);
  if (all.length === 0) return [];
  return all.filter(
    ({ organ, finding }) =>
      isLesion(finding, processes) &&
      (asked === undefined || asked.includes(organ.id) || asked.includes(organ.system)),
  );
}

export interface PlacedGrade {
  readonly organ: PlacedOrgan;
  /** Name of the scale. */
  readonly id: string;
  readonly grade: number;
  readonly path: Path;
}

/** Grades that are written down under the names of scales. */
export const gradesOf = fact((one: Case): readonly PlacedGrade[] =>
  placedStates(one).flatMap(({ organ, state }) => {
    if (state.entry?.grades === undefined || state !== one.organ(organ)) return [];
    return Object.entries(state.entry.grades).map(([id, grade]) => {
      return { organ, id, grade, path: [...state.path, "grades", id] };
    });
  }),
);

/** Where the entry of an organ says that something is wrong with it: a finding, an observation or a grade. */
export function lesionPath(one: Case, organ: PlacedOrgan, state: OrganState): Path | undefined {
  if (state.findings.length > 0) return state.findings[0]?.path;
  const side = state.sides.find((entry) => entry.state.status === "recorded");
  if (side !== undefined) return side.state.path;
  if (state !== one.organ(organ)) return undefined;
  for (const [key, definition] of Object.entries(organ.definition.observations ?? {})) {
    const below = observedLesion(state.entry?.[key], definition);
    if (below !== undefined) return [...state.path, key, ...below];
  }
  const grade = Object.entries(state.entry?.grades ?? {}).find(([id, value]) => value > normalGrade(id));
  return grade === undefined ? undefined : [...state.path, "grades", grade[0]];
}

/** The grade of a normal organ: 0, or the lowest grade of a scale that begins at 1. */
const normalGrade = (id: string): number =>
  Math.max(0, (Object.hasOwn(scaleRanges, id) ? scaleRanges[id]?.range[0] : undefined) ?? 0);

function observedLesion(value: unknown, definition: Observation): Path | undefined {
  const isBeyondNormal = (part: unknown): boolean => {
    if (typeof part === "number") return part > 0;
    if (definition.normal === undefined || part === undefined || part === null) return false;
    return [part].flat().some((word) => word !== definition.normal);
  };
  if (definition.parts === undefined) return isBeyondNormal(value) ? [] : undefined;
  const part = Object.entries((value ?? {}) as Record<string, unknown>).find(([, entry]) =>
    isBeyondNormal(entry),
  );
  return part === undefined ? undefined : [part[0]];
}
