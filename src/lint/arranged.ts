/** Rules as the linter asks them: family by family, by name, and silent where the times they reckon with cannot be right. */
import type { Case } from "../cases/index.ts";
import { hasDoubtfulTimes } from "../record/index.ts";
import { families, type Report, type Rule } from "./rule.ts";

export const arranged = (rules: readonly Rule[]): readonly Rule[] =>
  rules
    .map(whileTimesHold)
    .sort((a, b) => families.indexOf(a.family) - families.indexOf(b.family) || (a.id < b.id ? -1 : 1));

const whileTimesHold = (rule: Rule): Rule =>
  rule.trustsTimes && rule.scope === "case"
    ? {
        ...rule,
        check: (one: Case, report: Report) => (hasDoubtfulTimes(one) ? undefined : rule.check(one, report)),
      }
    : rule;
