/** What is compared: the indicators and scales of the settings, each with how one pig answers. */
import { type Case, pathOf, unknownName, valueAt } from "../cases/index.ts";
import { indicatorAnswer } from "../herd/index.ts";
import type { Indicator, Scale } from "../knowledge/index.ts";
import {
  type Confidence,
  checkScales,
  scaleNamed,
  scalesInUse,
  scalesOf,
  scoreCase,
} from "../score/index.ts";

/** One pig's answer, with what the answer rests on. */
export interface Answered {
  readonly one: Case;
  /** 1 yes, 0 no; or the score. Null when it could not be read. */
  readonly value: number | null;
  /** Level of the section, where the scale asks for one. */
  readonly section: string | undefined;
  /** `graded`: one grade for the organ stands in for its parts. */
  readonly grade: "graded" | "computed";
  /** The definition that was used. */
  readonly form: string;
}

export interface Question {
  readonly kind: "indicator" | "scale";
  readonly id: string;
  readonly title: string;
  readonly unit?: string;
  readonly source: string | null;
  readonly confidence: Confidence | null;
  /** Answer of a pig; undefined when its settings do not know the question. */
  ask(one: Case): Answered | undefined;
}

export interface Asked {
  readonly indicators?: readonly string[];
  readonly scales?: readonly string[];
}

/**
 * The questions of these cases, indicators first, in the order of the settings or as asked. Naming some of one kind leaves
 * out the other kind.
 * @throws RangeError with the nearest name for one that does not exist
 */
export function questionsOf(cases: readonly Case[], { indicators, scales }: Asked): Question[] {
  const known = [...new Set(cases.flatMap((one) => [...one.settings.indicators.keys()]))];
  const unknown = indicators?.find((id) => !known.includes(id));
  if (unknown !== undefined) throw new RangeError(unknownName(unknown, known, "indicator"));
  checkScales(cases, scales);
  return [
    ...(indicators ?? (scales === undefined ? known : [])).map((id) => ofIndicator(id, cases)),
    ...(scales !== undefined || indicators === undefined ? ofScales(cases, scales) : []),
  ];
}

function ofIndicator(id: string, cases: readonly Case[]): Question {
  const first = cases.find((one) => one.settings.indicators.has(id));
  const indicator = first?.settings.indicators.get(id);
  if (first === undefined || indicator === undefined) throw new RangeError(`there is no indicator "${id}"`);
  const scale = scaleOf(indicator, first);
  const confidences = [indicator.source?.confidence, scale?.source.confidence];
  return {
    kind: "indicator",
    id,
    title: indicator.title,
    source: indicator.source?.cite ?? null,
    confidence: confidences.includes("from-memory") ? "from-memory" : (confidences[0] ?? null),
    ask(one) {
      const own = one.settings.indicators.get(id);
      if (own === undefined) return undefined;
      const answer = indicatorAnswer(own, one);
      const read = scaleOf(own, one);
      return {
        one,
        value: answer === "not examined" ? null : answer === "yes" ? 1 : 0,
        ...restingOn(one, read),
        form: JSON.stringify([own, read]),
      };
    },
  };
}

const scaleOf = ({ score }: Indicator, one: Case): Scale | undefined =>
  score === undefined ? undefined : scaleNamed(one, score.scale);

function ofScales(cases: readonly Case[], asked: readonly string[] | undefined): Question[] {
  const inUse = scalesInUse(cases);
  const used = new Map<string, Scale>();
  for (const one of cases)
    for (const scale of scalesOf(one, inUse, asked)) if (!used.has(scale.id)) used.set(scale.id, scale);
  return [...used].map(([id, { title, unit, source }]) => ({
    kind: "scale",
    id,
    title,
    ...(unit !== undefined && { unit }),
    source: source.cite,
    confidence: source.confidence,
    ask(one) {
      const own = scaleNamed(one, id);
      if (own === undefined) return undefined;
      return { one, value: scoreCase(one, own).value, ...restingOn(one, own), form: JSON.stringify(own) };
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
