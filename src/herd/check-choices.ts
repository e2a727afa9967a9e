/** Choices that cannot be had together, said before anything is computed. */
import { BINOMIAL_METHODS, requireLevel } from "../statistics/index.ts";
import { corrected } from "./corrected.ts";
import type { HerdOptions } from "./herd-options.ts";

/**
 * @throws RangeError when the level is not between 0 and 1, the interval has no such name, options do not go together,
 *   or the test errs too much to say anything
 */
export function checkChoices(options: HerdOptions): void {
  const { level, interval, finite, cluster, test, combine } = options;
  if (level !== undefined) requireLevel(level);
  if (interval !== undefined && !BINOMIAL_METHODS.includes(interval))
    throw new RangeError(`there is no interval "${interval}"; there are ${BINOMIAL_METHODS.join(", ")}`);
  const own = finite === true ? "finite" : cluster === undefined ? undefined : "cluster";
  if (finite === true && cluster !== undefined)
    throw new RangeError(
      `"finite" and "cluster" cannot be had together: the one takes pigs as drawn singly, the other does not`,
    );
  if (own !== undefined && interval !== undefined && interval !== "clopper-pearson")
    throw new RangeError(`"${own}" makes an interval of its own; leave out "interval"`);
  if (combine === true && cluster !== undefined)
    throw new RangeError(
      `"combine" and "cluster" cannot be had together: the weighted interval takes pigs as drawn singly within their group`,
    );
  if (test !== undefined) checkTest(options, own ?? (combine === true ? "combine" : undefined));
}

function checkTest({ indicators, test, level = 0.95 }: HerdOptions, other: string | undefined): void {
  if (indicators?.length !== 1)
    throw new RangeError("sensitivity and specificity are those of one question; name one indicator");
  if (other !== undefined)
    throw new RangeError(
      `sensitivity and specificity cannot be had together with "${other}": no interval for both is known to us`,
    );
  if (test !== undefined) corrected(0, 1, test, { level, method: "clopper-pearson" });
}
