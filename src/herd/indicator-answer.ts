/** The yes/no questions asked of every pig. */
import type { Case, OrganState } from "../cases/index.ts";
import { type Indicator, organById, type Scale, type ScalePart } from "../knowledge/index.ts";
import { scales } from "../knowledge/scales.ts";
import { findingsOf, isLesion } from "../record/index.ts";
import { scaleNamed, scoreCase, scoreOrgan, stateFor } from "../score/index.ts";
import type { Answer } from "./answer.ts";
import { resultAnswer } from "./result-answer.ts";

/**
 * What one pig answers.
 *
 * For the `score` form a pig is not graded when it cannot be told on which side of the limit its score lies, and not examined
 * where the organ was not; a whole system recorded as normal cannot be scored. For the `finding` form see `findingAnswer`; there the
 * same word means no.
 * @throws RangeError when the indicator names a scale or organ that does not exist, or asks nothing
 */
export function indicatorAnswer(indicator: Indicator, one: Case): Answer {
  const { score, finding, result } = indicator;
  if (result !== undefined) return resultAnswer(result, one);
  if (finding !== undefined) return findingAnswer(finding, one);
  if (score === undefined || (score.at_least === undefined && score.above === undefined))
    throw new RangeError(
      `indicator "${indicator.title}": it needs a score with at_least or above, or a finding`,
    );
  const scale = scaleNamed(one, score.scale);
  if (scale === undefined) throw new RangeError(`there is no scale "${score.scale}"`);
  const { value, bounds } = scoreCase(one, scale);
  const [least, greatest] = bounds ?? [value, value];
  if (least === null || greatest === null) return withoutScore(one, scale);
  const reached = (points: number): boolean =>
    (score.at_least === undefined || points >= score.at_least) &&
    (score.above === undefined || points > score.above);
  if (reached(least)) return "yes";
  return reached(greatest) ? "not graded" : "no";
}

/** Why a pig has no score: nobody looked, or what was seen makes none. */
export const withoutScore = (one: Case, scale: Scale): "not graded" | "not examined" =>
  ["normal", "recorded"].includes(stateFor(one, scale).status) ? "not graded" : "not examined";

/** A pig that answered. */
export interface Answered {
  readonly one: Case;
  readonly yes: boolean;
}

export interface Answers {
  readonly answered: readonly Answered[];
  readonly not_graded: number;
  readonly not_examined: number;
}

/** The pigs that answered, each with its answer, and how many did not. */
export function answersOf(indicator: Indicator, cases: readonly Case[]): Answers {
  const answers = cases.map((one) => ({ one, answer: indicatorAnswer(indicator, one) }));
  const times = (wanted: Answer) => answers.filter(({ answer }) => answer === wanted).length;
  return {
    answered: answers.flatMap(({ one, answer }) =>
      answer === "yes" || answer === "no" ? [{ one, yes: answer === "yes" }] : [],
    ),
    not_graded: times("not graded"),
    not_examined: times("not examined"),
  };
}

/** Yes of all that answered. */
export const countOf = (answered: readonly Answered[]) => ({
  affected: answered.filter(({ yes }) => yes).length,
  examined: answered.length,
});

type FindingQuestion = NonNullable<Indicator["finding"]>;

/**
 * Whether the lesion is there.
 *
 * Yes: a lesion (see isLesion) of one of the processes, or of any, when none is named, is described, or a grade amounts to
 * one (`shows` of the scales).
 * No: the organ is normal, also by the word normal for its whole system; or it is recorded without such a lesion.
 * Not examined: blank, not examined, not assessable; or only one side of a paired organ was looked at.
 * Not graded: nothing is described, and the grades that would show the lesion are not complete.
 */
function findingAnswer(question: FindingQuestion, one: Case): Answer {
  const organ = organById(question.organ);
  if (organ === undefined) throw new RangeError(`there is no organ "${question.organ}"`);
  const state = one.organ(organ);
  const described = findingsOf(one).filter((placed) => placed.organ === organ);
  if (described.some(({ finding }) => isLesion(finding, question.process))) return "yes";
  const graded = gradedAnswer(question, state, [...scales.values(), ...one.settings.houseScales.values()]);
  if (graded === "yes") return "yes";
  if (state.status === "normal") return "no";
  if (state.status !== "recorded" || !bothSidesSeen(state)) return "not examined";
  return described.length > 0 ? "no" : (graded ?? "no");
}

/** Left and right of a paired organ, unless the organ is described as a whole. */
function bothSidesSeen({ findings, sides }: OrganState): boolean {
  if (sides.length === 0 || findings.length > 0) return true;
  const seen = sides.filter(({ state }) => state.status === "normal" || state.status === "recorded");
  return seen.length === 2;
}

/** What the grades say: undefined when no scale of this organ grades the lesion. */
function gradedAnswer(
  { organ, process }: FindingQuestion,
  state: OrganState,
  known: readonly Scale[],
): Answer | undefined {
  if (state.status !== "recorded") return undefined;
  const answers = known
    .filter((scale) => scale.organ === organ)
    .flatMap((scale) => shownBy(scale, process, state) ?? []);
  return (["yes", "no", "not graded"] as const).find((answer) => answers.includes(answer));
}

function shownBy(scale: Scale, asked: readonly string[] | undefined, state: OrganState): Answer | undefined {
  const grading = Object.entries(scale.parts).flatMap(([name, part]) => {
    const shows = shownIn(scale, part, asked);
    return shows === undefined ? [] : [{ name, above: shows.above }];
  });
  if (grading.length === 0) return undefined;
  const { parts, value, missing, from_grade: onlyGrade } = scoreOrgan(scale, state);
  if (onlyGrade) return shownByGrade(scale, value, grading);
  const valid = Object.keys(scale.requires ?? {}).every(
    (read) => !missing.includes(`${scale.organ}.${read}`),
  );
  if (!valid) return "not graded";
  const values = grading.map(({ name, above }) => ({ value: parts[name] ?? null, above }));
  if (values.some((part) => part.value !== null && part.value > part.above)) return "yes";
  return values.every((part) => part.value !== null) ? "no" : "not graded";
}

/** A total without parts shows the lesion only when every part would. */
function shownByGrade(scale: Scale, value: number | null, grading: readonly { above: number }[]): Answer {
  if (value === scale.when_normal) return "no";
  const everyPart = grading.length === Object.keys(scale.parts).length;
  return everyPart && grading.every(({ above }) => above === scale.when_normal) ? "yes" : "not graded";
}

function shownIn(scale: Scale, part: ScalePart, asked: readonly string[] | undefined) {
  const shows = part.shows ?? scale.shows;
  if (shows === undefined) return undefined;
  return asked === undefined || shows.process.some((process) => asked.includes(process)) ? shows : undefined;
}
