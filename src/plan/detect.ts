/** How many pigs to examine, so that a disease that is present is found? */
import {
  affectedCount,
  detectionSampleSize,
  detectionSampleSizeUnlimited,
  type Rounding,
  zeroUpperFinite,
  oneSidedUpper,
} from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { levelPercent, percent } from "../words/percent.ts";
import { detectByHerdTest } from "./detect-herd-test.ts";
import { detectByPools } from "./detect-pools.ts";
import { ascending, type Cell, cautionsOf, type Plan } from "./plan.ts";
import { cannonRoeSource, exactDraw, unlimitedDraw } from "./sources.ts";

/** A question about detection. Shares are from 0 to 1. */
export interface DetectQuestion {
  /** Pigs in the herd or group; without limit when left out. */
  readonly herd?: number;
  /** Share affected that is not to be missed. */
  readonly prevalence: number;
  /** Wanted probability of finding at least one; 0.95 when left out. */
  readonly confidence?: number;
  /** Share of affected pigs (or of pools with one) that the examination finds; 1 when left out. */
  readonly sensitivity?: number;
  /** Share of healthy pigs that it calls healthy; 1 when left out. */
  readonly specificity?: number;
  /** Wanted probability that a herd without the disease is called free of it; 0.95 when left out. */
  readonly herdSpecificity?: number;
  /** Pigs in one pooled sample; no pools when left out. */
  readonly poolSize?: number;
  /** How a share of the herd becomes whole pigs; up when left out. */
  readonly rounding?: Rounding;
  /** Prevalences of the table. */
  readonly over?: readonly number[];
}

/** A question with its defaults in place. */
export type AskedDetection = Required<Omit<DetectQuestion, "herd" | "poolSize">> &
  Pick<DetectQuestion, "herd" | "poolSize">;

const usualPrevalences = [0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5];

/**
 * Plans a number to detect: exact for a herd of known size, with the formula of Cannon & Roe beside it; with a
 * cut-off when the test is sometimes wrong on healthy pigs; in pools.
 *
 * @throws RangeError when a number is out of its range, or pools are asked for with a specificity below 1.
 */
export function planDetect(question: DetectQuestion): Plan {
  const asked: AskedDetection = {
    confidence: 0.95,
    sensitivity: 1,
    specificity: 1,
    herdSpecificity: 0.95,
    rounding: "ceil",
    ...question,
    over: ascending(...(question.over ?? usualPrevalences), question.prevalence),
  };
  if (asked.poolSize !== undefined) {
    if (asked.specificity < 1) throw new RangeError("pools are worked out for a specificity of 1 only");
    return detectByPools(asked, asked.poolSize);
  }
  if (asked.specificity < 1) return detectByHerdTest(asked);
  return asked.herd === undefined ? unlimited(asked) : inHerd(asked, asked.herd);
}

/** What was asked, as it stands in JSON. */
export const askedCells = (asked: AskedDetection): Record<string, Cell> => ({
  herd: asked.herd ?? null,
  prevalence: asked.prevalence,
  confidence: asked.confidence,
  sensitivity: asked.sensitivity,
  specificity: asked.specificity,
  rounding: asked.rounding,
});

/** `5 % of 600 pigs is 30 affected pigs (D = 30; the share is rounded up).` */
export function affectedSentence({ prevalence, rounding }: AskedDetection, herd: number): string {
  const words = { ceil: "up (ceil)", round: "to the nearest (round)", floor: "down (floor)" };
  const affected = affectedCount(herd, prevalence, rounding);
  return `${levelPercent(prevalence)} of ${count(herd, "pig")} is taken as D = ${affected} affected, rounded ${words[rounding]}, at least 1.`;
}

function inHerd(asked: AskedDetection, herd: number): Plan {
  const { prevalence, confidence: level, sensitivity, rounding } = asked;
  const at = (share: number) => {
    const affected = affectedCount(herd, share, rounding);
    return { affected, ...detectionSampleSize({ population: herd, affected }, { sensitivity, level }) };
  };
  const { affected, n, probability, probabilityBefore, most, cannonRoe } = at(prevalence);
  const formula = cannonRoe === null ? null : Math.ceil(cannonRoe - 1e-9);
  const answer =
    n === null
      ? `No number is enough: even all ${count(herd, "pig")} give a probability of ${percent(most)} only, because the examination misses affected pigs.`
      : `Examine ${n} of the ${count(herd, "pig")}, drawn at random. If ${affected} or more of them ${affected === 1 ? "is" : "are"} affected, at least one affected pig is found with a probability of ${percent(probability)} (with ${n - 1}: ${percent(probabilityBefore ?? 0)}).`;
  return {
    plan: "detect",
    title: "Number to detect",
    asked: askedCells(asked),
    answer: { affected, n, probability, probability_before: probabilityBefore, most, cannon_roe_raw: cannonRoe },
    sentences: [
      answer,
      affectedSentence(asked, herd),
      ...(n !== null && sensitivity === 1
        ? [noneFound(n, zeroUpperFinite(n, herd, level).upperCount, herd, level)]
        : []),
      ...(formula === null ? [] : [`The formula of Cannon & Roe gives ${formula}.`]),
    ],
    table: {
      title: `Number to examine of ${herd}, by prevalence`,
      columns: [
        { key: "prevalence", head: "prevalence", as: "asked" },
        { key: "affected", head: "D", as: "count" },
        { key: "n", head: "examine", as: "count" },
        { key: "probability", head: "found with", as: "share" },
        ...(sensitivity === 1 ? [{ key: "cannon_roe", head: "Cannon & Roe", as: "count" as const }] : []),
      ],
      rows: asked.over.map((share) => {
        const row = at(share);
        return {
          prevalence: share,
          affected: row.affected,
          n: row.n,
          probability: row.probability,
          ...(row.cannonRoe === null ? {} : { cannon_roe: Math.ceil(row.cannonRoe - 1e-9) }),
        };
      }),
    },
    cautions: cautionsOf("random-only", "not-free", "pens-alike", ...(sensitivity === 1 ? ["perfect-test" as const] : ["no-false-positives" as const])),
    sources: sensitivity === 1 ? [exactDraw, cannonRoeSource] : [exactDraw],
  };
}

function noneFound(n: number, most: number, herd: number, level: number): string {
  return `If none of ${n} is affected, there is ${levelPercent(level)} confidence that at most ${most} of the ${herd} are.`;
}

function unlimited(asked: AskedDetection): Plan {
  const { prevalence, confidence: level, sensitivity } = asked;
  const at = (share: number) => detectionSampleSizeUnlimited(share, { sensitivity, level });
  const found = (n: number, share: number): number => -Math.expm1(n * Math.log1p(-share * sensitivity));
  const { n } = at(prevalence);
  return {
    plan: "detect",
    title: "Number to detect",
    asked: askedCells(asked),
    answer: { n, probability: found(n, prevalence) },
    sentences: [
      `Examine ${count(n, "pig")}, drawn at random. If ${levelPercent(prevalence)} or more of a large herd are affected, at least one affected pig is found with a probability of ${percent(found(n, prevalence))}.`,
      "No herd size was given, so the herd is taken as without limit; in a herd of known size fewer are enough (--herd).",
      ...(sensitivity === 1
        ? [`If none of ${n} is affected, there is ${levelPercent(level)} confidence that at most ${percent(oneSidedUpper(0, n, level))} of the herd are.`]
        : []),
    ],
    table: {
      title: "Number to examine of a large herd, by prevalence",
      columns: [
        { key: "prevalence", head: "prevalence", as: "asked" },
        { key: "n", head: "examine", as: "count" },
        { key: "probability", head: "found with", as: "share" },
      ],
      rows: asked.over.map((share) => ({ prevalence: share, n: at(share).n, probability: found(at(share).n, share) })),
    },
    cautions: cautionsOf("random-only", "not-free", "pens-alike", ...(sensitivity === 1 ? ["perfect-test" as const] : ["no-false-positives" as const])),
    sources: [unlimitedDraw],
  };
}
