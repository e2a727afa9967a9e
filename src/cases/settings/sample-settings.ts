/** Samples as a practice has them: the sets that ship, changed or added to, and what it says of its containers. */
import type { SettingsFile } from "../../generated/settings.types.ts";
import {
  organById,
  type SampleSet,
  sampleCare,
  sampleRules,
  sampleSets,
  systems,
} from "../../knowledge/index.ts";
import type { Path } from "../model/path.ts";
import { checkName, fault, type SettingsFault } from "./settings-fault.ts";

type Written = NonNullable<SettingsFile["samples"]>;
type HouseSet = NonNullable<Written["sets"]>[string];

export interface SampleSettings {
  readonly sets: ReadonlyMap<string, SampleSet>;
  /** Volumes of the pots that there are; undefined for those that ship. */
  readonly pots: readonly string[] | undefined;
  readonly formalinRatio: number;
  /** What a container is called on the packing list. */
  readonly containers: Readonly<Record<string, string>>;
  /** Own limits in hours, by their name. */
  readonly keeps: Readonly<Record<string, number>>;
}

/** `blood into plain-tube`: by it a sample of a set is known. */
const sampleKey = ({ from, into }: { readonly from: string; readonly into: string }): string =>
  `${from} into ${into}`;

export function sampleSettings(written: Written = {}): SampleSettings {
  const { sets: own = {}, pots, formalin_ratio: ratio, containers = {}, keeps = {} } = written;
  const resolve = (id: string): SampleSet | undefined => {
    const changes = Object.hasOwn(own, id) ? own[id] : undefined;
    const base = sampleSets.get(changes?.extends ?? id);
    return changes === undefined ? base : changed(id, base, changes);
  };
  const sets = [...new Set([...sampleSets.keys(), ...Object.keys(own)])].flatMap((id) => {
    const set = resolve(id);
    return set === undefined ? [] : [[id, set] as const];
  });
  return {
    sets: new Map(sets),
    pots,
    formalinRatio: ratio ?? sampleRules.formalin.ratio,
    containers,
    keeps,
  };
}

/** What the practice writes goes before what ships; its samples come after those that stay. */
function changed(id: string, base: SampleSet | undefined, changes: HouseSet): SampleSet {
  const { extends: _from, leave_out: without = [], samples = [], mates = [], once = [], ...rest } = changes;
  const gone = new Set([...without, ...samples.map(sampleKey)]);
  const start: SampleSet = base ?? {
    format: 1,
    id,
    title: id,
    source: { cite: "settings of this repository", confidence: "common-practice" },
    samples: [],
    examples: [{ pig: { class: "weaner" } }],
  };
  return {
    ...start,
    ...rest,
    id,
    samples: [...start.samples.filter((sample) => !gone.has(sampleKey(sample))), ...samples],
    mates: [...(start.mates ?? []), ...mates],
    once: [...(start.once ?? []), ...once],
  };
}

const materials: readonly string[] = [...systems.map(({ id }) => id), ...Object.keys(sampleRules.materials)];
const isMaterial = (from: string): boolean => organById(from) !== undefined || materials.includes(from);

/** Faults of the part that fits its schema. */
export function sampleFaults({ sets = {}, keeps = {} }: Written = {}): SettingsFault[] {
  return [
    ...Object.entries(sets).flatMap(([id, set]) => {
      const path = ["samples", "sets", id];
      const base = sampleSets.get(set.extends ?? id);
      const has = (base?.samples ?? []).map(sampleKey);
      const all: readonly (readonly [Path, string])[] = (["samples", "mates", "once"] as const).flatMap(
        (part) => (set[part] ?? []).map(({ from }, index) => [[...path, part, index, "from"], from] as const),
      );
      return [
        ...(set.extends === undefined
          ? []
          : checkName([...path, "extends"], set.extends, [...sampleSets.keys()], "set of samples")),
        ...all.flatMap(([at, from]) =>
          isMaterial(from)
            ? []
            : fault(
                at,
                `there is no material "${from}". Write an organ as system.organ, such as nervous.brain, or blood, csf, faeces, feed.`,
              ),
        ),
        ...(set.leave_out ?? []).flatMap((name, index) =>
          has.includes(name)
            ? []
            : fault(
                [...path, "leave_out", index],
                `the set has no sample "${name}". Write it as ${has[0] ?? "blood into plain-tube"}.`,
              ),
        ),
      ];
    }),
    ...Object.keys(keeps).flatMap((name) =>
      checkName(["samples", "keeps", name], name, Object.keys(sampleCare.keeps), "time limit of a sample"),
    ),
  ];
}
