/** What is to be sampled of a pig: the samples of the sets that it asks for, each once, in the order of the knife. */
import { type Case, isUnborn, type Settings } from "../cases/index.ts";
import {
  type AgeClass,
  hasOrgan,
  organById,
  type SampleSet,
  type SetSample,
  type Sex,
  signFamilies,
} from "../knowledge/index.ts";
import { necropsySteps } from "../knowledge/knife.ts";
import { affirmed } from "../notes/index.ts";
import { isGut, testTitles } from "../record/index.ts";
import { amountOf } from "../sampling/index.ts";

/** A pig that is opened, or will be. */
export interface PigAsked {
  readonly ageClass: AgeClass | undefined;
  readonly sex: Sex | undefined;
  readonly signs: readonly string[];
  readonly isFoundDead: boolean;
  /** Set beside the ill ones: what may be found in healthy pigs too is taken of it as well. */
  readonly isHealthy: boolean;
  /** Sets that it asks for whatever its signs are. */
  readonly sets: readonly string[];
  readonly settings: Settings;
}

export interface SampleDue extends Omit<SetSample, "where" | "ask" | "site" | "classes" | "signs"> {
  /** The step of the necropsy in which it is taken. */
  readonly step: string;
  readonly asks: readonly string[];
  readonly sites: readonly string[];
  /** Only where one of these is found; empty where it is taken in any case. */
  readonly where: readonly string[];
  /** Sets that ask for it. */
  readonly sets: readonly string[];
}

/** The pig of a case. A complaint names only sets that no sign asks for: the others follow from the pig's own signs. */
export const pigOf = (one: Case): PigAsked => ({
  ageClass: one.ageClass,
  sex: one.record.pig?.sex,
  signs: one.signs.filter((sign) => sign !== "none"),
  isFoundDead: one.record.death?.manner === "found-dead" || one.record.selection?.basis === "found-dead",
  isHealthy: one.record.selection?.basis === "comparison",
  sets:
    one.record.selection?.basis === "comparison"
      ? []
      : setsNamed(one.visit?.record.complaint ?? "", one.settings).filter(
          (id) => one.settings.samples.sets.get(id)?.when === undefined,
        ),
  settings: one.settings,
});

/** Sets of which a complaint has a word. */
export const setsNamed = (complaint: string, { samples }: Settings): string[] =>
  [...samples.sets.values()]
    .filter(({ words = [] }) => affirmed(complaint, words).length > 0)
    .map(({ id }) => id);

/** @param beside the other pigs of the visit; they tell what is set beside what */
export function setsOf(pig: PigAsked, beside: readonly PigAsked[] = []): SampleSet[] {
  const own = [...pig.settings.samples.sets.values()].filter(
    (set) => pig.sets.includes(set.id) || isAsked(set, pig),
  );
  const compared = pig.isHealthy
    ? beside
        .filter(({ ageClass, isHealthy }) => !isHealthy && ageClass === pig.ageClass)
        .flatMap((ill) => setsOf(ill))
        .filter(({ compare }) => compare !== undefined)
    : [];
  return [...new Set([...own, ...compared])];
}

function isAsked({ when }: SampleSet, { ageClass = "weaner", signs, isFoundDead }: PigAsked): boolean {
  if (when === undefined || when.classes?.includes(ageClass) === false) return false;
  if (when.signs === undefined && when.manners === undefined) return true;
  return hasSign(signs, when.signs) || (isFoundDead && when.manners?.includes("found-dead") === true);
}

/** Whether one of the signs stands in a list of signs and their families. */
const hasSign = (signs: readonly string[], list: readonly string[] = []): boolean =>
  [...signs, ...signFamilies(signs)].some((one) => list.includes(one));

/** Of a pig on the line nothing is taken for its signs. */
export const samplesOfCase = (one: Case, beside: readonly Case[] = []): SampleDue[] =>
  one.protocol.follow_signs ? samplesDue(pigOf(one), beside.map(pigOf)) : [];

export function samplesDue(pig: PigAsked, beside: readonly PigAsked[] = []): SampleDue[] {
  const merged = new Map<string, SampleDue>();
  for (const set of setsOf(pig, beside)) {
    // A set that was asked for by its words alone has no sign to go by.
    const isBySign = !pig.isHealthy && hasSign(pig.signs, set.when?.signs);
    for (const sample of set.samples) {
      if (!isOfPig(sample, pig, isBySign)) continue;
      const key = `${sample.from} ${sample.into}`;
      merged.set(key, joined(merged.get(key), sample, set.id));
    }
  }
  const due = [...merged.values()];
  const isScour = due.some(({ from, least }) => least && isGut(from));
  return due
    .map((sample) => ({ sample, place: place(sample, isScour) }))
    .sort((a, b) => a.place - b.place)
    .map(({ sample }) => sample);
}

/** An organ that this pig has; fluids and faeces of a pig that lived. A healthy pig has no lesion to look for. */
function isOfPig({ from, classes, signs, where }: SetSample, pig: PigAsked, isBySign: boolean): boolean {
  if (classes?.includes(pig.ageClass ?? "weaner") === false) return false;
  if (signs !== undefined && isBySign && !hasSign(pig.signs, signs)) return false;
  if (pig.isHealthy && where !== undefined) return false;
  const organ = organById(from);
  return organ === undefined ? !isUnborn(pig.ageClass) : hasOrgan(organ.definition, pig.ageClass, pig.sex);
}

/** The same sample of two sets is taken once, for the tests of both. */
function joined(known: SampleDue | undefined, sample: SetSample, set: string): SampleDue {
  const { ask, site, where, for: tests, classes: _classes, signs: _signs, ...rest } = sample;
  const with_ = (list: readonly string[] = [], text: string | undefined): string[] =>
    text === undefined || list.includes(text) ? [...list] : [...list, text];
  const isAlways = known !== undefined && (known.where.length === 0 || where === undefined);
  const most = <T extends "mass" | "amount">(name: T): { [key in T]?: string } => {
    const [a, b] = [known?.[name], sample[name]];
    const more = (amountOf(a) ?? 0) >= (amountOf(b) ?? 0) ? a : b;
    return (more === undefined ? {} : { [name]: more }) as { [key in T]?: string };
  };
  const [first = "archive", ...others] = allTests.filter(
    (test) => tests.includes(test) || known?.for.includes(test) === true,
  );
  return {
    ...rest,
    ...most("mass"),
    ...most("amount"),
    for: [first, ...others],
    pieces: Math.max(known?.pieces ?? 1, sample.pieces ?? 1),
    ...((known?.least ?? sample.least) && { least: true as const }),
    step: stepOf(sample),
    asks: with_(known?.asks, ask),
    sites: with_(known?.sites, site),
    where: isAlways ? [] : with_(known?.where, where),
    sets: [...(known?.sets ?? []), set],
  };
}

/** The first moment at which it is to be had; what no step names is taken where its organ is looked at. */
function stepOf({ from, into }: Pick<SetSample, "from" | "into">): string {
  const step =
    necropsySteps.find(({ samples }) =>
      samples.some((one) => one.from === from && one.into.includes(into)),
    ) ??
    necropsySteps.find(({ organs }) => organs.some(({ id }) => id === from)) ??
    necropsySteps.find(({ id }) => id === "first-fluids");
  return step?.id ?? "";
}

const allTests = Object.keys(testTitles) as SetSample["for"][number][];

/** In a pig with scour pieces of gut go into formalin as soon as the belly is open, before the rest of their step. */
function place({ step, from, into }: SampleDue, isScour: boolean): number {
  const isAtOnce = isScour && step === "gut-pieces" && into === "formalin";
  const at = necropsySteps.findIndex(({ id }) => id === (isAtOnce ? "cavities-opened" : step));
  const line = necropsySteps[at]?.samples.findIndex((one) => one.from === from && one.into.includes(into));
  return at * 100 + (line === undefined || line < 0 ? 99 : line);
}
