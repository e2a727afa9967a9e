/** Before the visit: what to take of which pigs, and what must be in the car for it. */
import { type Case, quantity, type Settings } from "../cases/index.ts";
import {
  type AgeClass,
  type SampleSet,
  type SetMates,
  type SetOnce,
  sampleCare,
  sampleRules,
} from "../knowledge/index.ts";
import { isAmong, isGut } from "../record/index.ts";
import { amountOf } from "../sampling/index.ts";
import { type PigAsked, pigOf, type SampleDue, samplesDue, setsOf } from "./due.ts";

export interface PlannedPig {
  /** Of a pig that is known already. */
  readonly id: string | undefined;
  readonly pig: PigAsked;
}

/** Pigs of which the same is taken. */
export interface PigGroup {
  readonly pigs: readonly PlannedPig[];
  readonly ageClass: AgeClass | undefined;
  readonly isHealthy: boolean;
  readonly samples: readonly SampleDue[];
}

interface BringLine {
  readonly into: string;
  readonly count: number;
  /** Those of them that are needed only where something is found. */
  readonly only: number;
  /** `pots of formalin, 250 ml` */
  readonly what: string;
  readonly chain: "cold" | "frozen" | "room";
}

export interface SamplePlan {
  readonly sets: readonly SampleSet[];
  readonly groups: readonly PigGroup[];
  readonly mates: readonly SetMates[];
  readonly once: readonly SetOnce[];
  readonly bring: readonly BringLine[];
  /** Grams of tissue, and the litres of formalin for it. */
  readonly formalin: { readonly tissue: number; readonly litres: number; readonly ratio: number };
  readonly authority: readonly string[];
}

export const plannedCases = (cases: readonly Case[]): PlannedPig[] =>
  cases
    .filter(({ protocol, due }) => protocol.follow_signs && due.length > 0)
    .map((one) => ({ id: one.id, pig: pigOf(one) }));

export function samplePlan(pigs: readonly PlannedPig[], settings: Settings): SamplePlan {
  const beside = pigs.map(({ pig }) => pig);
  const sets = [...new Set(beside.flatMap((pig) => setsOf(pig, beside)))];
  const groups = new Map<string, PigGroup>();
  for (const one of pigs) {
    const { ageClass, isHealthy } = one.pig;
    const samples = samplesDue(one.pig, beside);
    const key = JSON.stringify([
      ageClass,
      isHealthy,
      samples.map(({ from, into, for: tests }) => [from, into, tests]),
    ]);
    const known = groups.get(key);
    groups.set(key, { pigs: [...(known?.pigs ?? []), one], ageClass, isHealthy, samples });
  }
  const mates = eachOnce(
    sets.flatMap((set) => set.mates ?? []),
    ({ of, from, into }) => `${of} ${from} ${into}`,
  );
  const once = eachOnce(
    sets.flatMap((set) => set.once ?? []),
    ({ from, into }) => `${from} ${into}`,
  );
  const all = [...groups.values()].sort((a, b) => Number(a.isHealthy) - Number(b.isHealthy));
  const tissue = all.reduce((sum, group) => sum + group.pigs.length * tissueOf(group.samples), 0);
  const { formalinRatio: ratio } = settings.samples;
  return {
    sets,
    groups: all,
    mates,
    once,
    bring: bringOf(
      all,
      [...mates.map((one) => ({ ...one, count: one.number })), ...once.map((one) => ({ ...one, count: 1 }))],
      settings,
    ),
    formalin: { tissue, litres: (tissue * ratio) / 1000, ratio },
    authority: [...new Set(sets.flatMap((set) => set.authority ?? []))],
  };
}

/** What two sets ask for alike stands once. */
function eachOnce<T>(list: readonly T[], key: (one: T) => string): T[] {
  return [...new Map(list.map((one) => [key(one), one])).values()];
}

const isInFormalin = ({ into }: SampleDue): boolean => into === "formalin";

/** Grams of tissue in formalin. */
const massOf = ({ mass, pieces = 1 }: SampleDue): number =>
  (amountOf(mass ?? sampleCare.formalin.piece) ?? 0) * pieces;

const tissueOf = (samples: readonly SampleDue[]): number =>
  samples.filter(isInFormalin).reduce((sum, sample) => sum + massOf(sample), 0);

/** The pots of one pig: gut in its own, which is closed at once, what is large in one of its own, and the rest together. */
function potsOf(samples: readonly SampleDue[]): (readonly SampleDue[])[] {
  const fixed = samples.filter(isInFormalin);
  const own = fixed.filter(({ from }) => isAmong(from, sampleCare.formalin.own_pot));
  const rest = fixed.filter((sample) => !own.includes(sample));
  const isScour = fixed.some(({ least, from }) => least && isGut(from));
  const gut = isScour ? rest.filter(({ step }) => step === "gut-pieces") : [];
  return [gut, rest.filter((sample) => !gut.includes(sample)), ...own.map((sample) => [sample])].filter(
    (pot) => pot.length > 0,
  );
}

/** The smallest pot that holds tissue and formalin; of the largest as many as it takes. */
function potFor(
  samples: readonly SampleDue[],
  { samples: { pots = sampleCare.formalin.pots, formalinRatio } }: Settings,
): {
  readonly size: string;
  readonly count: number;
} {
  const needed = (tissueOf(samples) * (1 + formalinRatio)) / 1000;
  const sizes = pots
    .map((size) => ({ size, litres: quantity("volume", size.replace(/\s+/, "")) ?? 0 }))
    .sort((a, b) => a.litres - b.litres);
  const fits = sizes.find(({ litres }) => litres >= needed) ?? sizes.at(-1);
  return {
    size: fits?.size ?? "",
    count: fits === undefined ? 1 : Math.max(1, Math.ceil(needed / fits.litres)),
  };
}

function bringOf(
  groups: readonly PigGroup[],
  besides: readonly { readonly into: string; readonly count: number }[],
  settings: Settings,
): BringLine[] {
  const lines = new Map<string, { into: string; size: string; count: number; only: number }>();
  const add = (into: string, size: string, count: number, only: number): void => {
    const known = lines.get(`${into} ${size}`) ?? { into, size, count: 0, only: 0 };
    lines.set(`${into} ${size}`, { ...known, count: known.count + count, only: known.only + only });
  };
  for (const { pigs, samples } of groups) {
    for (const pot of potsOf(samples)) {
      const { size, count } = potFor(pot, settings);
      add(
        "formalin",
        size,
        count * pigs.length,
        pot.every(({ where }) => where.length > 0) ? count * pigs.length : 0,
      );
    }
    for (const sample of samples.filter((one) => !isInFormalin(one))) {
      const number = (sample.pieces ?? 1) * pigs.length;
      add(sample.into, "", number, sample.where.length > 0 ? number : 0);
    }
  }
  for (const { into, count } of besides) add(into, "", count, 0);
  const order = Object.keys(sampleCare.containers);
  return [...lines.values()]
    .sort((a, b) => order.indexOf(a.into) - order.indexOf(b.into))
    .map(({ into, size, count, only }) => {
      const care = sampleCare.containers[into];
      const name = (count === 1 ? care?.bring : care?.several) ?? into;
      const own = settings.samples.containers[into];
      return {
        into,
        count,
        only,
        what: [name, ...(size === "" ? [] : [size]), ...(own === undefined ? [] : [own])].join(", "),
        chain: care?.chain ?? "cold",
      };
    });
}

/** How a fixed piece is cut. */
export const pieceThickness = sampleRules.formalin.thickness;
