/** The observations that an organ of a case must have, and what is missing of them. */
import { type Case, type Finding, type OrganState, type Path, pathOf } from "../cases/index.ts";
import { type Observation, organs, type PlacedOrgan } from "../knowledge/index.ts";
import { fact } from "./fact.ts";
import { signFamiliesOf } from "./visit.ts";

/** Something that should have been observed and was not. */
export interface MissingObservation {
  readonly organ: PlacedOrgan;
  readonly observation: string;
  readonly definition: Observation;
  /** The lobe, side or concha that is missing; undefined when the whole observation is. */
  readonly part: string | undefined;
  readonly path: Path;
}

/** What can be observed on each organ that has observations. */
const observable = organs
  .map((organ) => ({ organ, observations: Object.entries(organ.definition.observations ?? {}) }))
  .filter(({ observations }) => observations.length > 0);

/** Every required observation of the organs of a case that is missing, whole or in part. */
export const missingObservations = fact((one: Case): readonly MissingObservation[] => {
  if (one.protocol.observations === "optional") return [];
  const found: MissingObservation[] = [];
  for (const { organ, observations } of observable) {
    const state = one.organ(organ);
    if (state.status === "blank") continue;
    for (const [observation, definition] of observations) {
      const value = state.entry?.[observation];
      const path = (): Path => (state.bySystem ? state.path : [...pathOf(organ.id), observation]);
      if (value !== undefined && value !== null) {
        for (const part of Object.keys(definition.parts ?? {}))
          if ((value as Record<string, unknown>)[part] == null)
            found.push({ organ, observation, definition, part, path: [...path(), part] });
      } else if (isRequired(one, organ, definition, state))
        found.push({ organ, observation, definition, part: undefined, path: path() });
    }
  }
  return found;
});

/** What must be observed of an organ of this pig even where it is normal, as it would be written: `section: premolar-1`. */
export const askedOfNormal = (
  { ageClass = "weaner" }: Case,
  { definition }: PlacedOrgan,
): readonly string[] =>
  Object.entries(definition.observations ?? {})
    .filter(([, { required }]) => required === "always")
    .filter(([, { required_in: classes }]) => classes === undefined || classes.includes(ageClass))
    .map(([observation, { values = [] }]) => `${observation}: ${values.slice(0, 3).join(" | ")}`);

function isRequired(one: Case, organ: PlacedOrgan, definition: Observation, state: OrganState): boolean {
  const { required, required_in: classes, asked_by: lesions, not_of_diffuse: diffuse } = definition;
  if (required === undefined) return false;
  if (classes !== undefined && !classes.includes(one.ageClass ?? "weaner")) return false;
  if (state.status === "normal") return required === "always" && one.due.includes(organ);
  if (state.status !== "recorded") return false;
  const { findings } = state;
  // A bare list holds no observation; where each of its findings says as much, nobody goes back for it.
  const isTold = findings.every(({ finding }) => isListedIn(finding.site, definition));
  const isMeasured = isShare(definition) && !signFamiliesOf(one).includes("respiratory");
  const isSaid = isTold || (isMeasured && findings.every(({ finding }) => isCranioventral(finding)));
  if (state.entry === undefined && findings.length > 0 && isSaid) return false;
  return (
    lesions === undefined ||
    findings.length === 0 ||
    findings.some(
      ({ finding: { process, distribution } }) =>
        lesions.includes(process) && !(distribution === "diffuse" && diffuse?.includes(process) === true),
    )
  );
}

/** Whether it is a share of each part: of a pig that does not cough, one extent does for all lobes (common practice). */
const isShare = ({ kind, parts }: Observation): boolean => kind === "percent" && parts !== undefined;

const isCranioventral = ({ distribution, extent }: Finding): boolean =>
  distribution === "cranioventral" && extent !== undefined;

/** Whether a site names what the observation lists: the left hock was opened, for there is the lesion. */
function isListedIn(site: string | undefined, { kind, values = [] }: Observation): boolean {
  const words = site?.toLowerCase().split(/[^a-z]+/) ?? [];
  return kind === "choices" && values.some((value) => value.split("-").every((word) => words.includes(word)));
}

/** What to call the missing thing: `the left caudal lobe`, or the title of the observation. */
export function missingTitle({ definition, part }: MissingObservation): string {
  return part === undefined ? definition.title : `the ${definition.parts?.[part] ?? part}`;
}

/** An example of what could be written for an observation. */
export function exampleOf({ definition, observation, part }: MissingObservation): string {
  const value =
    definition.kind === "choice" || definition.kind === "choices"
      ? (definition.values ?? []).join(" | ")
      : `${definition.range?.[0] ?? 0} to ${definition.range?.[1] ?? ""}`;
  return `${part ?? observation}: ${value}`;
}
