/** The statements of a disease against a visit or a case. */
import type { Disease, Statement } from "../knowledge/diseases.ts";
import { type Evidence, matchCondition, type Subject } from "../patterns/index.ts";

/** A statement that the record meets, with what meets it. */
export interface Met {
  readonly statement: Statement;
  readonly evidence: readonly Evidence[];
}

/** The statements that a record meets: a visit by itself or by any of its pigs, a case by itself. */
export const statementsMet = (disease: Disease, subject: Subject): Met[] =>
  disease.statements.flatMap((statement) => {
    const evidence = evidenceOf(statement, subject);
    return evidence === undefined ? [] : [{ statement, evidence }];
  });

function evidenceOf({ when }: Statement, subject: Subject): readonly Evidence[] | undefined {
  if (when === undefined) return undefined;
  const own = matchCondition(when, subject);
  if (!("cases" in subject)) return own;
  const matches = [own, ...subject.cases.map((one) => matchCondition(when, one))].filter(
    (match) => match !== undefined,
  );
  return matches.length === 0 ? undefined : matches.flat();
}
