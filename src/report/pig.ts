/** What a report says of one pig. */
import { dirname, join, sep } from "node:path";
import type { Case, OrganState } from "../cases/index.ts";
import { basisOf } from "../herd/index.ts";
import { agentName } from "../knowledge/agents.ts";
import type { Scale } from "../knowledge/index.ts";
import { organs, type PlacedOrgan, systems } from "../knowledge/index.ts";
import {
  askedOf,
  besideCase,
  conchae,
  diedAt,
  entriesOf,
  findingsOf,
  findingWords,
  hoursAfterDeath,
  hoursBetween,
  isLesion,
  lobes,
  namedCauses,
  openedAt,
  photographs,
  placedStates,
  type ResultEntry,
  samplesOf,
  stepAt,
  textOf,
} from "../record/index.ts";
import { lateSamples, timeWorth } from "../sampling/index.ts";
import { scoreCase } from "../score/index.ts";
import { grouped } from "../words/grouped.ts";
import type { Looked, ReportPhotograph, ReportPig } from "./result.ts";

/** Digests of photographs, by where they lie. */
export type Digests = ReadonlyMap<string, string>;

/** @param scales those of which scores are told */
export function pigOf(one: Case, scales: readonly Scale[], digests: Digests): ReportPig {
  const { pig, diagnosis } = one.record;
  const nose = conchae(one);
  const graded = lobes(one);
  const late = new Set(
    ["gut-histology", "culture", "histology"]
      .flatMap((kind) => lateSamples(one, kind, ["reduced", "doubtful"]))
      .map(({ index }) => index),
  );
  return {
    id: one.id,
    visit: one.visit?.id ?? null,
    group: pig?.group ?? null,
    basis: basisOf(one),
    age_days: one.ageDays ?? null,
    systems: Object.fromEntries(systems.map(({ id }) => [id, lookedAt(one, id)])),
    findings: findingsOf(one)
      .filter(({ finding }) => isLesion(finding))
      .map(({ organ, finding }) => ({
        organ: organ.id,
        process: finding.process,
        words: findingWords(finding),
      })),
    lobes: graded === undefined ? null : Object.fromEntries(graded.values),
    pleurisy: pleurisyOf(one),
    conchae:
      nose === undefined || nose.losses.length === 0
        ? null
        : {
            left: { dorsal: nose.left.dorsal ?? null, ventral: nose.left.ventral ?? null },
            right: { dorsal: nose.right.dorsal ?? null, ventral: nose.right.ventral ?? null },
            septum: typeof nose.septum === "string" ? nose.septum : null,
          },
    scores: scales.flatMap((scale) => {
      const { value, confidence } = scoreCase(one, scale);
      return value === null ? [] : [{ scale: scale.id, value, from_memory: confidence === "from-memory" }];
    }),
    limits: limitsOf(one),
    steps: stepsOf(one, late),
    samples: samplesOfPig(one),
    diagnosis: {
      morphologic: (diagnosis?.morphologic ?? []).map(textOf),
      aetiologic: (diagnosis?.aetiologic ?? []).map(textOf),
      causes: namedCauses(one).map(({ text }) => text),
      differentials: diagnosis?.differentials ?? [],
      basis: diagnosis?.basis ?? null,
    },
    photographs: photographsOf(one, digests),
  };
}

/** Each sample with what came back of it. */
function samplesOfPig(one: Case): ReportPig["samples"] {
  const asked = grouped(askedOf(one), ({ index }) => index);
  return samplesOf(one).map(({ sample: { id, from, into, for: tests, at }, index }) => {
    const all = asked.get(index) ?? [];
    return {
      id: id ?? "",
      from,
      into: into ?? null,
      tests: tests ?? [],
      at: at ?? null,
      open: all.filter(({ arrived }) => arrived.length === 0).map(({ test }) => test),
      results: all.flatMap(({ arrived }) => arrived.map(({ entry }) => resultOf(entry))),
    };
  });
}

function resultOf({ test, agent, analyte, interpretation, value, unit, text }: ResultEntry) {
  const measured =
    value === undefined ? undefined : [value, unit].filter((part) => part !== undefined).join(" ");
  return {
    test,
    of: agent === undefined ? (analyte ?? null) : agentName(agent),
    said: interpretation ?? measured ?? text ?? null,
  };
}

/** Each file once, as it was named first. */
function photographsOf(one: Case, digests: Digests): ReportPhotograph[] {
  const told = new Map<string, ReportPhotograph>();
  for (const { file, shows, note, organs: shown } of photographs(one)) {
    const location = besideCase(one, file);
    if (told.has(location)) continue;
    const [first, second] = shown;
    told.set(location, {
      file: join(dirname(one.file), file).split(sep).join("/"),
      shows: shows ?? (second === undefined ? (first?.id ?? null) : null),
      note: note ?? null,
      sha256: digests.get(location) ?? null,
    });
  }
  return [...told.values()];
}

/** The whole of a system: a lesion anywhere is one; normal only where something was looked at; else why it was left. */
function lookedAt(one: Case, system: string): { looked: Looked; reason: string | null } {
  const states = organs.filter((organ) => organ.system === system).map((organ) => one.organ(organ));
  const lesion =
    findingsOf(one).some(({ organ, finding }) => organ.system === system && isLesion(finding)) ||
    entriesOf(one).some(({ organ, entry }) => organ.system === system && showsLesion(organ, entry));
  if (lesion) return { looked: "lesion", reason: null };
  if (states.some(({ status }) => status === "normal" || status === "recorded"))
    return { looked: "normal", reason: null };
  const left = states.find(isLeft);
  return left === undefined
    ? { looked: "blank", reason: null }
    : { looked: "left", reason: left.reason ?? null };
}

/** Whether something was observed that no healthy organ shows: a lobe consolidated, a concha wasted, pleura grown together. */
function showsLesion({ definition }: PlacedOrgan, entry: Readonly<Record<string, unknown>>): boolean {
  return Object.entries(definition.observations ?? {}).some(([name, { kind, normal }]) => {
    const values = valuesIn(entry[name]);
    if (kind === "percent" || kind === "grade")
      return values.some((value) => typeof value === "number" && value > 0);
    return normal !== undefined && values.some((value) => value !== normal);
  });
}

/** The values of an observation, of all its parts. */
const valuesIn = (value: unknown): unknown[] =>
  value === undefined || value === null
    ? []
    : typeof value === "object"
      ? Object.values(value).flatMap(valuesIn)
      : [value];

const isLeft = ({ status }: OrganState): boolean => status === "not_examined" || status === "not_assessable";

function pleurisyOf(one: Case): ReportPig["pleurisy"] {
  const state = placedStates(one).find(({ organ }) => organ.id === "respiratory.pleura");
  const sides = state?.state.entry?.pleurisy as Record<string, unknown> | undefined;
  if (sides === undefined) return null;
  const places = (side: unknown): string[] =>
    [side].flat().filter((place): place is string => typeof place === "string" && place !== "none");
  return { left: places(sides.left), right: places(sides.right) };
}

/** A test once, with the shortest of its limits. */
function limitsOf(one: Case): ReportPig["limits"] {
  const least = new Map<string, number>();
  for (const { sample } of samplesOf(one))
    for (const test of sample.for ?? []) {
      const { limit } = timeWorth(one, sample, test);
      if (limit !== undefined) least.set(test, Math.min(limit, least.get(test) ?? Number.POSITIVE_INFINITY));
    }
  return [...least].map(([test, hours]) => ({ test, hours }));
}

function stepsOf(one: Case, late: ReadonlySet<number>): ReportPig["steps"] {
  const died = diedAt(one);
  const at = (hours: number | undefined, what: string, isLate = false) =>
    hours === undefined ? [] : [{ hours: Math.max(0, hours), what, late: isLate }];
  return [
    ...at(hoursBetween(died, openedAt(one)), "opened"),
    ...at(hoursBetween(died, stepAt(one, "gut_fixed")), "gut_fixed"),
    ...samplesOf(one).flatMap(({ sample, index }) =>
      sample.at === undefined
        ? []
        : at(hoursAfterDeath(one, sample), sample.id ?? `${index + 1}`, late.has(index)),
    ),
  ].sort((a, b) => a.hours - b.hours);
}
