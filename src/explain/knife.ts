/** The steps of a necropsy, as a tired person reads them: what to look at, how to get there, what to take while it is still there. */
import {
  alarmSigns,
  organById,
  type PlacedOrgan,
  sampleRules,
  sampleSets,
  sourceLine,
} from "../knowledge/index.ts";
import { knifeSource, knifeSources, type NecropsyStep, necropsySteps } from "../knowledge/knife.ts";
import { containerNames, testNames, testTitles } from "../record/index.ts";
import { capital } from "../words/listing.ts";
import { type Section, section, type Topic, yamlSection } from "./explanation.ts";

export const knifeTopics: readonly Topic[] = necropsySteps.map((step, index) => ({
  kind: "step",
  name: step.id,
  title: step.title,
  aliases: [step.title],
  explain: () => ({ sections: sectionsOf(step, index), source: knifeSource }),
}));

/** The step in which an organ is looked at. */
export const stepOf = ({ id }: PlacedOrgan): NecropsyStep | undefined =>
  necropsySteps.find(({ organs }) => organs.some((organ) => organ.id === id));

function sectionsOf(step: NecropsyStep, index: number): Section[] {
  const { organs, cut, landmark, mistake, samples, caution = [], ages = [], write = [] } = step;
  const named: string[] = [];
  /** A sentence with the number of its source, where it has one. */
  const said = (line: string | { readonly say: string; readonly by?: string }): string => {
    const { say, by } = typeof line === "string" ? { say: line } : line;
    if (by === undefined) return say;
    if (!named.includes(by)) named.push(by);
    return `${say} [${named.indexOf(by) + 1}]`;
  };
  const around = [index - 1, index + 1].map((at) => necropsySteps[at]?.id);
  const place = [
    ...(around[0] === undefined ? [] : [`after ${around[0]}`]),
    ...(around[1] === undefined ? [] : [`before ${around[1]}`]),
  ].join(", ");
  return [
    ...section(null, [`Step ${index + 1} of ${necropsySteps.length}, ${place}.`]),
    ...section("Stop, and call the authority, at", signsAt(step)),
    ...section(
      "Caution",
      caution.map(({ say, safety }) => `${say} (Safety: ${capital(safety.replaceAll("-", " "))})`),
    ),
    ...section("Cut", cut.map(said)),
    ...section("Landmark", landmark.map(said)),
    ...section(
      "Look at",
      organs.map(({ definition }) => `${definition.title}: ${definition.look}.`),
    ),
    ...section("Usual mistake", mistake.map(said)),
    ...section("Take now, because later is too late", samples.map(sampleLine)),
    ...section(
      "At another age",
      ages.map((age) => `${age.classes.join(", ")}: ${said(age)}`),
    ),
    ...yamlSection(
      "Write",
      write.length === 0
        ? undefined
        : `steps: {${write.map((one) => `${one}: 2026-03-14T10:05`).join(", ")}}`,
    ),
    ...section(
      "Who says so",
      named.flatMap((name, at) => {
        const source = knifeSources.get(name);
        return source === undefined ? [] : [`[${at + 1}] ${sourceLine(source)}.`];
      }),
    ),
  ];
}

/** Signs of a notifiable disease for which this is the moment to look. */
const signsAt = ({ id, organs }: NecropsyStep): string[] =>
  [...alarmSigns.values()]
    .filter(({ look, due_with: due }) =>
      look === "before_knife"
        ? id === necropsySteps[0]?.id
        : organs.some((organ) => due.includes(organ.id) || due.includes(organ.system)),
    )
    .map(({ asks }) => `${capital(asks)}.`);

/** `Spinal fluid: plain tube, for cytology; only now is it free of blood.` */
export function sampleLine({ from, into, why }: NecropsyStep["samples"][number]): string {
  const sets = [...sampleSets.values()].flatMap(({ samples }) => samples);
  const asked = new Set<string>(
    sets.filter((one) => one.from === from && into.includes(one.into)).flatMap((one) => one.for),
  );
  const tests = Object.keys(testTitles).filter((test) => asked.has(test));
  const what = organById(from)?.definition.title ?? capital(sampleRules.materials[from]?.title ?? from);
  return `${what}: ${containerNames(into)}, for ${testNames(tests)}; ${why}.`;
}
