/** Writes a complete case for any protocol, age class, sex and signs, from the knowledge files alone. */
import { stringify } from "yaml";
import { organsDue, type ResolvedProtocol } from "../../src/cases/index.ts";
import { type AgeClass, alarmSigns, type Observation, type Sex } from "../../src/knowledge/index.ts";

export interface CaseWish {
  readonly protocol: ResolvedProtocol;
  readonly ageClass: AgeClass;
  readonly sex: Sex;
  readonly signs: readonly string[];
}

const age: Record<AgeClass, string | undefined> = {
  mummy: undefined,
  aborted: undefined,
  stillborn: undefined,
  suckling: "10 d",
  weaner: "58 d",
  finisher: "130 d",
  adult: "900 d",
};
const weight: Record<AgeClass, string> = {
  mummy: "300 g",
  aborted: "600 g",
  stillborn: "1.2 kg",
  suckling: "3.4 kg",
  weaner: "19 kg",
  finisher: "80 kg",
  adult: "210 kg",
};

export function completeCase({ protocol, ageClass, sex, signs }: CaseWish): string {
  const systems: Record<string, Record<string, unknown>> = {};
  for (const organ of organsDue({ protocol, ageClass, sex, signs }).due) {
    const required = Object.entries(organ.definition.observations ?? {}).filter(([, observation]) =>
      isRequired(observation, ageClass),
    );
    const entry = Object.fromEntries(required.map(([key, observation]) => [key, observed(observation)]));
    const inSystem = systems[organ.system] ?? {};
    const always = required.every(([, observation]) => observation.required === "always");
    inSystem[organ.key] = required.length === 0 ? "normal" : always ? { state: "normal", ...entry } : entry;
    systems[organ.system] = inSystem;
  }
  const unborn = age[ageClass] === undefined;
  const killed = { manner: "euthanised", method: "barbiturate" };
  const [manner] = unborn ? ["born-dead"] : (protocol.manners ?? []);
  const died = manner === undefined ? killed : { manner };
  return stringify({
    format: 1,
    case: "made-1",
    protocol: protocol.id,
    examiner: "R. Sallow",
    pig: {
      tag: "77",
      group: "g-1",
      ...(unborn ? { class: ageClass, crown_rump: "18 cm" } : { age: age[ageClass] }),
      sex,
      weight: weight[ageClass],
    },
    selection: signs.includes("none")
      ? { basis: "comparison", signs, treated: "no" }
      : { basis: "clinical", signs, onset: "36 h", treated: "no", typical: "yes" },
    death: { ...died, at: "2026-04-20T09:10" },
    opened: { at: "2026-04-20T09:40", ambient: "14 °C", state: "fresh" },
    alarm_check: { before_knife: answers("before_knife"), at_knife: answers("at_knife") },
    ...systems,
  });
}

function isRequired(observation: Observation, ageClass: AgeClass): boolean {
  const { required, required_in: classes } = observation;
  return required !== undefined && (classes === undefined || classes.includes(ageClass));
}

function observed(observation: Observation): unknown {
  const value =
    observation.kind === "percent" || observation.kind === "grade"
      ? 0
      : (observation.normal ?? harmless(observation));
  if (observation.parts === undefined)
    return observation.kind === "choices" && observation.normal === undefined
      ? observation.values?.slice(0, 2)
      : value;
  return Object.fromEntries(Object.keys(observation.parts).map((part) => [part, value]));
}

/** The first word, but for the float test: a stillborn piglet has not breathed. */
const harmless = ({ values }: Observation): string | undefined =>
  values?.includes("sinks") ? "sinks" : values?.[0];

const answers = (look: string): object =>
  Object.fromEntries([...alarmSigns].flatMap(([name, sign]) => (sign.look === look ? [[name, "none"]] : [])));
