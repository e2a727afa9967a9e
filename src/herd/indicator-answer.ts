/** The yes/no questions asked of every pig. */
import type { Case } from "../cases/index.ts";
import type { Indicator } from "../knowledge/index.ts";
import { scaleNamed, scoreCase } from "../score/index.ts";
import type { Answer } from "./answer.ts";
import { findingAnswer } from "./finding-answer.ts";

/**
 * What one pig answers.
 *
 * For the `score` form a pig whose score cannot be told, for whatever reason, is not examined; a whole system recorded as
 * normal cannot be scored. For the `finding` form see `findingAnswer`; there the same word means no.
 * @throws RangeError when the indicator names a scale or organ that does not exist, or asks nothing
 */
export function indicatorAnswer(indicator: Indicator, one: Case): Answer {
  const { score, finding } = indicator;
  if (finding !== undefined) return findingAnswer(finding, one);
  if (score === undefined || (score.at_least === undefined && score.above === undefined))
    throw new RangeError(
      `indicator "${indicator.title}": it needs a score with at_least or above, or a finding`,
    );
  const scale = scaleNamed(one, score.scale);
  if (scale === undefined) throw new RangeError(`there is no scale "${score.scale}"`);
  const { value } = scoreCase(one, scale);
  if (value === null) return "not examined";
  const reached =
    (score.at_least === undefined || value >= score.at_least) &&
    (score.above === undefined || value > score.above);
  return reached ? "yes" : "no";
}
