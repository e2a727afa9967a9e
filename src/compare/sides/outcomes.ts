/** The outcomes that are compared: indicators and scales of the settings, each with how it is read in one pig. */
import { type Case, pathOf, valueAt } from "../../cases/index.ts";
import { checkIndicators, indicatorAnswer, indicatorNamed, sourcesOf } from "../../herd/index.ts";
import type { Indicator, Scale } from "../../knowledge/index.ts";
import { checkScales, scaleNamed, scalesInUse, scalesOf, scoreCase } from "../../score/index.ts";
import type { Asked, Comparison } from "../comparison.ts";
import type { Side } from "./blocks.ts";

/** What was read in one pig, and what it rests on. */
export interface Answered {
  readonly one: Case;
  /** 1 yes, 0 no; or the score. */
  readonly value: number;
  /** Level of the section, where the scale asks for one. */
  readonly section: string | undefined;
  /** `graded`: one grade for the organ stands in for its parts. */
  readonly grade: "graded" | "computed";
  /** The definition that was used. */
  readonly form: string;
}

export interface Outcome {
  readonly label: Pick<
    Comparison,
    "kind" | "question" | "title" | "organ" | "unit" | "source" | "confidence"
  >;
  /** Undefined when it could not be read, or the settings of the pig do not know it. */
  read(one: Case): Answered | undefined;
}

/** The pigs of a side in which an outcome could be read, and how many more there were. */
export interface AnsweredSide {
  readonly side: Side;
  readonly answers: readonly Answered[];
  readonly not_examined: number;
}

export function readSide(side: Side, outcome: Outcome): AnsweredSide {
  const answers = side.cases.flatMap((one) => outcome.read(one) ?? []);
  return { side, answers, not_examined: side.cases.length - answers.length };
}

export const valuesOf = (answers: readonly Answered[]): number[] => answers.map(({ value }) => value);

/** Yes of all that answered. */
export const countOf = (answers: readonly Answered[]) => ({
  affected: answers.filter(({ value }) => value === 1).length,
  examined: answers.length,
});

/**
 * The outcomes of these cases, indicators first, in the order of the settings or as asked. Naming some of one kind leaves
 * out the other kind.
 * @throws RangeError with the nearest name for one that does not exist
 */
export function outcomesOf(
  cases: readonly Case[],
  { indicators, scales }: Pick<Asked, "indicators" | "scales">,
): Outcome[] {
  checkIndicators(cases, indicators);
  checkScales(cases, scales);
  return [
    ...(indicators !== undefined || scales === undefined ? indicatorsOf(cases, indicators) : []),
    ...(scales !== undefined || indicators === undefined ? scaleOutcomes(cases, scales) : []),
  ];
}

function indicatorsOf(cases: readonly Case[], asked: readonly string[] | undefined): Outcome[] {
  const ids = asked ?? [...new Set(cases.flatMap((one) => [...one.settings.indicators.keys()]))];
  return ids.flatMap((id) => {
    const first = cases.find((one) => indicatorNamed(one, id) !== undefined);
    const indicator = first && indicatorNamed(first, id);
    return first === undefined || indicator === undefined ? [] : [indicatorOutcome(id, indicator, first)];
  });
}

function indicatorOutcome(id: string, indicator: Indicator, first: Case): Outcome {
  const { source, confidence, scale } = sourcesOf(indicator, [first]);
  const read = indicator.score && scaleNamed(first, indicator.score.scale);
  const memory = confidence === "from-memory" || scale?.confidence === "from-memory";
  return {
    label: {
      kind: "indicator",
      question: id,
      title: indicator.title,
      organ: indicator.finding?.organ ?? read?.organ ?? id,
      source,
      confidence: memory ? "from-memory" : confidence,
    },
    read(one) {
      const own = indicatorNamed(one, id);
      const answer = own === undefined ? "not examined" : indicatorAnswer(own, one);
      if (own === undefined || (answer !== "yes" && answer !== "no")) return undefined;
      const scaled = own.score && scaleNamed(one, own.score.scale);
      const value = answer === "yes" ? 1 : 0;
      return { one, value, ...restingOn(one, scaled), form: JSON.stringify([own, scaled]) };
    },
  };
}

function scaleOutcomes(cases: readonly Case[], asked: readonly string[] | undefined): Outcome[] {
  const inUse = scalesInUse(cases);
  const used = new Map<string, Scale>();
  for (const one of cases)
    for (const scale of scalesOf(one, inUse, asked)) if (!used.has(scale.id)) used.set(scale.id, scale);
  return [...used].map(([id, { title, organ, unit, source }]) => ({
    label: {
      kind: "scale",
      question: id,
      title,
      organ,
      ...(unit !== undefined && { unit }),
      source: source.cite,
      confidence: source.confidence,
    },
    read(one) {
      const own = scaleNamed(one, id);
      const value = own === undefined ? null : scoreCase(one, own).value;
      if (own === undefined || value === null) return undefined;
      return { one, value, ...restingOn(one, own), form: JSON.stringify(own) };
    },
  }));
}

function restingOn(one: Case, scale: Scale | undefined): Pick<Answered, "section" | "grade"> {
  if (scale === undefined) return { section: undefined, grade: "computed" };
  const sections = Object.keys(scale.requires ?? {}).map((read) =>
    valueAt(one.record, [...pathOf(scale.organ), ...pathOf(read)]),
  );
  const written = sections.filter((value) => typeof value === "string");
  return {
    section: written.length === 0 ? undefined : written.join(", "),
    grade: scoreCase(one, scale).from_grade === true ? "graded" : "computed",
  };
}
