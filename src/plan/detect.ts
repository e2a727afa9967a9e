/** How many pigs to examine, so that a disease that is present is found? */
import {
  affectedCount,
  detectionSampleSize,
  detectionSampleSizeUnlimited,
  oneSidedUpper,
  zeroUpperFinite,
} from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { decimalsApart, decimalsFor, levelPercent, percent } from "../words/percent.ts";
import { detectByHerdTest } from "./detect-herd-test.ts";
import { detectByPools } from "./detect-pools.ts";
import {
  type AskedDetection,
  affectedSentence,
  askedCells,
  type DetectQuestion,
} from "./detection-question.ts";
import { ascending, cautionsOf, type Plan } from "./plan.ts";
import { cannonRoeSource, exactDraw, unlimitedDraw } from "./sources.ts";

const usualPrevalences = [0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5];

/**
 * Plans a number to detect: exact for a herd of known size, with the formula of Cannon & Roe beside it; with a
 * cut-off when the test is sometimes wrong on healthy pigs; in pools.
 *
 * @throws RangeError when a number is out of its range, a herd specificity is wanted of a test that is always right on
 *   healthy pigs, or pools are asked for with a specificity below 1.
 */
export function planDetect(question: DetectQuestion): Plan {
  if (question.herdSpecificity !== undefined && question.specificity === undefined)
    throw new RangeError(
      "a herd specificity is for a test that is sometimes wrong on healthy pigs; say how often it is right on them (--specificity 98%)",
    );
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
    if (asked.herd !== undefined && asked.poolSize > asked.herd) {
      throw new RangeError(`a pool of ${asked.poolSize} pigs cannot be filled from a herd of ${asked.herd}`);
    }
    if (asked.specificity < 1) throw new RangeError("pools are worked out for a specificity of 1 only");
    return detectByPools(asked, asked.poolSize);
  }
  if (asked.specificity < 1) return detectByHerdTest(asked);
  return asked.herd === undefined ? unlimited(asked) : inHerd(asked, asked.herd);
}

function inHerd(asked: AskedDetection, herd: number): Plan {
  const { prevalence, confidence: level, sensitivity, rounding } = asked;
  const at = (share: number) => {
    const affected = affectedCount(herd, share, rounding);
    return { affected, ...detectionSampleSize({ population: herd, affected }, { sensitivity, level }) };
  };
  const { affected, n, probability, probabilityBefore, most, cannonRoe } = at(prevalence);
  const formula = cannonRoe === null ? null : Math.ceil(cannonRoe - 1e-9);
  const before = probabilityBefore ?? 0;
  const fine = decimalsFor(level);
  const apart = decimalsApart(probability, before, fine);
  const answer =
    n === null
      ? `No number is enough: even all ${count(herd, "pig")} give a probability of ${percent(most, decimalsApart(most, level, 1))} only, because the examination misses affected pigs.`
      : `Examine ${n} of the ${count(herd, "pig")}, drawn at random. If ${affected} or more of them ${affected === 1 ? "is" : "are"} affected, at least one affected pig is found with a probability of ${percent(probability, apart)} (with ${n - 1}: ${percent(before, apart)}).`;
  return {
    plan: "detect",
    title: "Number to detect",
    asked: askedCells(asked),
    answer: {
      affected,
      n,
      probability,
      probability_before: probabilityBefore,
      most,
      cannon_roe_raw: cannonRoe,
    },
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
        { key: "probability", head: "found with", as: "share", decimals: fine },
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
    cautions: cautionsOf(
      "random-only",
      "not-free",
      "pens-alike",
      ...(sensitivity === 1 ? ["perfect-test" as const] : ["no-false-positives" as const]),
    ),
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
  const fine = decimalsFor(level);
  return {
    plan: "detect",
    title: "Number to detect",
    asked: askedCells(asked),
    answer: { n, probability: found(n, prevalence) },
    sentences: [
      `Examine ${count(n, "pig")}, drawn at random. If ${levelPercent(prevalence)} or more of a large herd are affected, at least one affected pig is found with a probability of ${percent(found(n, prevalence), fine)}.`,
      "No herd size was given, so the herd is taken as without limit; in a herd of known size fewer are enough (--herd).",
      ...(sensitivity === 1
        ? [
            `If none of ${n} is affected, there is ${levelPercent(level)} confidence that at most ${percent(oneSidedUpper(0, n, level))} of the herd are.`,
          ]
        : []),
    ],
    table: {
      title: "Number to examine of a large herd, by prevalence",
      columns: [
        { key: "prevalence", head: "prevalence", as: "asked" },
        { key: "n", head: "examine", as: "count" },
        { key: "probability", head: "found with", as: "share", decimals: fine },
      ],
      rows: asked.over.map((share) => ({
        prevalence: share,
        n: at(share).n,
        probability: found(at(share).n, share),
      })),
    },
    cautions: cautionsOf(
      "random-only",
      "not-free",
      "pens-alike",
      ...(sensitivity === 1 ? ["perfect-test" as const] : ["no-false-positives" as const]),
    ),
    sources: [unlimitedDraw],
  };
}
