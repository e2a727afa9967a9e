/** The criteria that the literature states for a disease, one by one. */
import {
  type Criterion,
  type Disease,
  type DiseaseCriteria,
  diseaseCriteria,
} from "../knowledge/diseases.ts";
import type { Subject } from "../patterns/index.ts";
import type { PlacedResult } from "../record/index.ts";
import { answered } from "./results.ts";
import { type Answer, answerOf, casesOf } from "./statements.ts";

export interface CheckedCriterion {
  readonly criterion: Criterion;
  /** `to-read`: what came of the laboratory is text. */
  readonly answer: Answer | { readonly is: "to-read" };
  /** The results that answer it. */
  readonly results: readonly PlacedResult[];
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
  const checked = criteria.criteria.map((criterion) => checkOne(criterion, subject));
  return { criteria, subject, checked, met: checked.filter(({ answer }) => answer.is === "met").length };
}

function checkOne(criterion: Criterion, subject: Subject): CheckedCriterion {
  if (criterion.when !== undefined)
    return { criterion, answer: answerOf(criterion.when, subject), results: [] };
  // What only a laboratory can answer is not looked at until it has.
  const found = answered(criterion, subject);
  if (found === undefined)
    return { criterion, answer: { is: "not-looked-at", organs: criterion.sample ?? [] }, results: [] };
  return {
    criterion,
    answer: found.is === "met" ? { is: "met", evidence: [] } : { is: found.is },
    results: found.results,
  };
}
