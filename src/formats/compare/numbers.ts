/** The numbers of a comparison as lines; the test that the claim rests on carries the verdict. */
import {
  type Adjustment,
  type ArmsCompared,
  allowedFor,
  type Between,
  byPensText,
  type Cluster,
  type Comparison,
  couldShowText,
  differenceText,
  facetsText,
  meansText,
  meansValue,
  pText,
  type Result,
  ratioText,
  shiftText,
  testText,
  unitWords,
  withinStrataText,
} from "../../compare/index.ts";
import { comparability } from "../../knowledge/index.ts";
import { count, listing } from "../../words/listing.ts";

/** What was asked of a comparison, and what else was asked. */
export interface Asked {
  readonly between: Between;
  readonly level: number;
  readonly cluster: Cluster;
  /** Undefined where p allowing for all has a column of its own. */
  readonly adjustment?: Adjustment;
}

/** The numbers of a comparison, a line each. */
export function numberTexts(one: Comparison, asked: Asked): string[] {
  const { result, unit, caveats, claim_on, no_claim, shown, sides, note } = one;
  const { between, level, cluster } = asked;
  if (result === null) return [];
  const after = verdict(one, asked);
  const whole =
    claim_on === "pigs"
      ? `${testText(result)}${after}`
      : `all pigs together, each for itself: ${testText(result)}`;
  const although = caveats.flatMap(({ although: factor }) =>
    factor === undefined ? [] : [`other ${comparability.factors[factor].title}`],
  );
  const pens = result.test === "unit-means" ? "" : byPensText(result, sides, unit, level, cluster);
  const could = shown || claim_on !== "pigs" || result.test !== "fisher-exact" ? "" : couldShowText(result);
  return [
    ...(result.test === "unit-means"
      ? [armsText(result, one, level, after)]
      : result.test === "fisher-exact"
        ? [
            ...(between === "ill" ? [] : [differenceText(result.difference, level)]),
            `${whole}; odds ratio ${ratioText(result.odds_ratio)}; risk ratio ${ratioText(result.risk_ratio)}`,
          ]
        : result.test === "mann-whitney"
          ? [shiftText(result, unit, level), whole]
          : [...firstToLast(result, unit, level), whole]),
    ...withinLine(one, level, claim_on === "strata" ? after : ""),
    ...(pens === "" || claim_on === "none"
      ? []
      : [`${pens}${claim_on?.startsWith("pens") === true ? after : ""}`]),
    ...(no_claim === null ? [] : [`no claim: ${no_claim}`]),
    ...(could === "" ? [] : [could]),
    ...(note === null ? [] : [note]),
    ...(although.length === 0 ? [] : [`compared although not comparable: ${listing(although)}`]),
  ];
}

/** Treated against control, each pen or group alike; without a test where none can be made. */
function armsText(
  result: ArmsCompared,
  { kind, unit = "points", claim_on }: Comparison,
  level: number,
  after: string,
): string {
  const of = kind === "scale" ? unit : undefined;
  const means = `by the means of ${unitWords(result)}: `;
  return claim_on === "none"
    ? `${means}${meansValue(result.difference, of)}`
    : `${means}${meansText(result.difference, of, level)}; ${testText(result)}${after}`;
}

/** How far the last visit lies from the first, of three or more. */
function firstToLast(result: Result, unit: string | undefined, level: number): string[] {
  if (result.test === "cochran-armitage")
    return [`first to last visit: ${differenceText(result.first_to_last, level)}`];
  if (result.test !== "cuzick" || result.first_to_last === null) return [];
  return [
    `first to last visit: ${shiftText({ shift: result.first_to_last, superiority: 0.5 }, unit, level)}`,
  ];
}

function verdict({ kind, question, p_adjusted, shown }: Comparison, { adjustment }: Asked): string {
  const alone =
    adjustment === undefined ||
    adjustment.comparisons < 2 ||
    (kind === "indicator" && question === adjustment.without);
  return `${alone ? "" : `, ${pText(p_adjusted ?? 1)} allowing for ${allowedFor(adjustment)}`}${shown ? ": shown" : ""}`;
}

function withinLine({ result }: Comparison, level: number, after: string): string[] {
  if (result === null || !("stratified" in result) || result.stratified === null) return [];
  const { stratified } = result;
  const strata = count(stratified.strata, "stratum", "strata");
  return [`within ${strata} (${facetsText(stratified)}): ${withinStrataText(stratified, level)}${after}`];
}
