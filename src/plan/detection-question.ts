/** What can be asked about detection, and how it is repeated in the answer. */
import { affectedCount, type Rounding } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { levelPercent } from "../words/percent.ts";
import type { Cell } from "./plan.ts";

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
