/** Rules of one shape are rows of a table: a row holds what is its own, the table what all of them share. */
import { type Case, formatPath, type Path } from "../../cases/index.ts";
import type { CaseRule, Family, FormatRule, RuleRow } from "../rule.ts";

/** A row of a table of rules each of which looks at one place and has one thing to say of it. */
export interface PlaceRow extends RuleRow {
  readonly at: Path;
  /** What is wrong there and what to write instead; undefined when nothing is. */
  says(one: Case): string | undefined;
}

export const placeRules = (family: Family, rows: readonly PlaceRow[]): readonly CaseRule[] =>
  rows.map(({ at, says, ...rule }) => ({
    ...rule,
    scope: "case",
    family,
    check(one, report) {
      const text = says(one);
      if (text !== undefined) report(`${formatPath(at)}: ${text}`, at);
    },
  }));

/** Rules without a check of their own: what they report is found elsewhere. */
export const reportedElsewhere = (rows: readonly RuleRow[]): readonly FormatRule[] =>
  rows.map((row) => ({ ...row, scope: "format", family: "format" }));
