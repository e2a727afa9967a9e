/** Number to detect with pooled samples. */
import { affectedCount, pooledSampleSize, pooledSampleSizeUnlimited } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { decimalsFor, levelPercent, percent } from "../words/percent.ts";
import { type AskedDetection, affectedSentence, askedCells } from "./detection-question.ts";
import { type Cell, cautionsOf, type Plan } from "./plan.ts";
import { poolSource } from "./sources.ts";

/** @throws RangeError when a number is out of its range */
export function detectByPools(asked: AskedDetection, poolSize: number): Plan {
  const { herd, sensitivity, confidence, rounding, prevalence } = asked;
  const at = (share: number) => {
    if (herd === undefined) {
      const { pools, animals } = pooledSampleSizeUnlimited(share, { poolSize, sensitivity }, confidence);
      const one = sensitivity * -Math.expm1(poolSize * Math.log1p(-share));
      return { affected: null, pools, animals, probability: -Math.expm1(pools * Math.log1p(-one)) };
    }
    const affected = affectedCount(herd, share, rounding);
    return {
      affected,
      ...pooledSampleSize({ population: herd, affected }, { poolSize, sensitivity }, confidence),
    };
  };
  const found = at(prevalence);
  const fine = decimalsFor(confidence);
  const of = herd === undefined ? "a large herd" : `the ${count(herd, "pig")}`;
  const rows: Record<string, Cell>[] = asked.over.map((share) => ({ prevalence: share, ...at(share) }));
  return {
    plan: "detect",
    title: "Number of pools to detect",
    asked: { ...askedCells(asked), pool_size: poolSize },
    answer: { ...found },
    sentences: [
      found.pools === null
        ? `No number of pools is enough: all full pools of ${poolSize} give a probability of ${percent(found.probability, fine)} only.`
        : `Test ${count(found.pools, "pool")} of ${count(poolSize, "pig")} each (${count(found.animals ?? 0, "pig")} drawn at random of ${of}). If ${levelPercent(prevalence)} or more are affected, at least one pool is positive with a probability of ${percent(found.probability, fine)}.`,
      `A pool with at least one affected pig is taken to be positive with a probability of ${levelPercent(sensitivity)}, whatever the number of healthy pigs in it (no further dilution); a pool of healthy pigs never.`,
      ...(herd === undefined ? [] : [affectedSentence(asked, herd)]),
    ],
    table: {
      title: `Pools of ${poolSize} to test, by prevalence`,
      columns: [
        { key: "prevalence", head: "prevalence", as: "asked" },
        ...(herd === undefined ? [] : [{ key: "affected", head: "D", as: "count" as const }]),
        { key: "pools", head: "pools", as: "count" },
        { key: "animals", head: "pigs", as: "count" },
        { key: "probability", head: "found with", as: "share", decimals: fine },
      ],
      rows,
    },
    cautions: cautionsOf("random-only", "pool-dilution", "not-free", "pens-alike"),
    sources: [poolSource],
  };
}
