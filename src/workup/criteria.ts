/** The criteria that the literature states for a disease, one by one. */
import {
  type Criterion,
  type Disease,
  type DiseaseCriteria,
  diseaseCriteria,
} from "../knowledge/diseases.ts";
import type { Subject } from "../patterns/index.ts";
import { type Answer, answerOf, casesOf } from "./statements.ts";

export interface CheckedCriterion {
  readonly criterion: Criterion;
  readonly answer: Answer;
}

export interface CheckedCriteria {
  readonly criteria: DiseaseCriteria;
  /** The pig that meets most of them, where one pig must meet them. */
  readonly subject: Subject;
  readonly checked: readonly CheckedCriterion[];
  /** How many are met. */
  readonly met: number;
}

/** Undefined where the literature states none for the disease. */
export function criteriaOf({ id }: Disease, subject: Subject): CheckedCriteria | undefined {
  const criteria = diseaseCriteria.find(({ disease }) => disease === id);
  if (criteria === undefined) return undefined;
  const asked = criteria.of === "pig" ? casesOf(subject) : [subject];
  const [best] = asked.map((one) => check(criteria, one)).sort((a, b) => b.met - a.met);
  return best;
}

function check(criteria: DiseaseCriteria, subject: Subject): CheckedCriteria {
  const checked = criteria.criteria.map((criterion) => ({ criterion, answer: answerTo(criterion, subject) }));
  return { criteria, subject, checked, met: checked.filter(({ answer }) => answer.is === "met").length };
}

/** What only a laboratory can answer is not looked at until it has. */
const answerTo = ({ when, sample }: Criterion, subject: Subject): Answer =>
  when === undefined ? { is: "not-looked-at", organs: sample ?? [] } : answerOf(when, subject);
