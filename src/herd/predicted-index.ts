/** Herd indices expected from sneezes and coughs: a first look before anybody has opened a pig. */
import { clinicalPredictors } from "../knowledge/index.ts";
import { withoutFloatError } from "../score/index.ts";

/**
 * The herd index that farms with this much sneezing or coughing had on average: intercept + slope x per cent.
 *
 * The lines are those of Morés et al. 2001 (64 farms; R2 0.36 for sneezing, 0.45 for coughing), so that a single farm can lie
 * far from its line.
 * @param index `embrapa-index` (from sneezes) or `pneumonia-index` (from coughs)
 * @param percent sneezes or coughs in two minutes as per cent of the pigs of the batch, 0 or more; mean of three counts
 * @returns the index, in points
 * @throws RangeError when there is no line for the index, or the percentage is no number of 0 or more
 */
export function predictedIndex(index: string, percent: number): number {
  const line = clinicalPredictors.get(index);
  if (line === undefined)
    throw new RangeError(
      `there is no line for the index "${index}"; there are ${[...clinicalPredictors.keys()].join(" and ")}`,
    );
  if (!(percent >= 0 && Number.isFinite(percent)))
    throw new RangeError(`percent must be 0 or more, got ${percent}`);
  return withoutFloatError(line.intercept + line.slope * percent);
}
