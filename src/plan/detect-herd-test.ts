/** Number to detect with a test that is sometimes wrong on healthy pigs: a number and a cut-off. */
import { affectedCount, herdTestSampleSize } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { decimalsFor, levelPercent, percent } from "../words/percent.ts";
import { type AskedDetection, affectedSentence, askedCells } from "./detection-question.ts";
import { cautionsOf, type Plan } from "./plan.ts";
import { herdTestSource } from "./sources.ts";

/** A herd without a stated size is worked out as this large; the number no longer depends on it. */
const largeHerd = 10_000_000;

/** @throws RangeError when a number is out of its range */
export function detectByHerdTest(asked: AskedDetection): Plan {
  const herd = asked.herd ?? largeHerd;
  const { sensitivity, specificity, confidence, herdSpecificity, rounding, prevalence } = asked;
  const at = (share: number) =>
    herdTestSampleSize(
      { population: herd, affected: affectedCount(herd, share, rounding) },
      { sensitivity, specificity },
      { herdSensitivity: confidence, herdSpecificity },
    );
  const found = at(prevalence);
  const [fineSe, fineSp] = [decimalsFor(confidence), decimalsFor(herdSpecificity)];
  const aims = `a herd sensitivity of ${levelPercent(confidence)} and a herd specificity of ${levelPercent(herdSpecificity)}`;
  return {
    plan: "detect",
    title: "Number to detect with an imperfect test",
    asked: { ...askedCells(asked), herd_specificity: herdSpecificity },
    answer: {
      affected: affectedCount(herd, prevalence, rounding),
      n: found?.n ?? null,
      cutoff: found?.cutoff ?? null,
      herd_sensitivity: found?.herdSensitivity ?? null,
      herd_specificity: found?.herdSpecificity ?? null,
    },
    sentences: [
      found === null
        ? `No number of pigs reaches ${aims} with a cut-off up to 100 positive pigs. Confirm positive pigs with a second test, or plan for a higher prevalence.`
        : `Test ${count(found.n, "pig")}, drawn at random, and call the herd affected when ${found.cutoff} or more are positive. An affected herd is then recognised with a probability of ${percent(found.herdSensitivity, fineSe)}, a free one called free with ${percent(found.herdSpecificity, fineSp)}.`,
      `One test is positive in ${levelPercent(sensitivity)} of affected and in ${levelPercent(Number((1 - specificity).toPrecision(12)))} of healthy pigs; the aims are ${aims}.`,
      asked.herd === undefined
        ? "No herd size was given, so the herd is worked out as 10 000 000 pigs."
        : affectedSentence(asked, asked.herd),
    ],
    table: {
      title: "Number to test and cut-off, by prevalence",
      columns: [
        { key: "prevalence", head: "prevalence", as: "asked" },
        { key: "affected", head: "D", as: "count" },
        { key: "n", head: "test", as: "count" },
        { key: "cutoff", head: "positive from", as: "count" },
        { key: "herd_sensitivity", head: "herd sensitivity", as: "share", decimals: fineSe },
        { key: "herd_specificity", head: "herd specificity", as: "share", decimals: fineSp },
      ],
      rows: asked.over.map((share) => {
        const row = at(share);
        return {
          prevalence: share,
          affected: affectedCount(herd, share, rounding),
          n: row?.n ?? null,
          cutoff: row?.cutoff ?? null,
          herd_sensitivity: row?.herdSensitivity ?? null,
          herd_specificity: row?.herdSpecificity ?? null,
        };
      }),
    },
    cautions: cautionsOf("random-only", "not-free", "pens-alike"),
    sources: [herdTestSource],
  };
}
