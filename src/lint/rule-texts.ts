/** What a rule says of itself. The build keeps these texts in a file of their own, because linting needs none of them. */
import type { Rule } from "./rule.ts";

export type RuleTexts = Pick<Rule, "summary" | "protects" | "lookAlike" | "source" | "bad" | "good">;

export const textsOf = (rule: Rule): RuleTexts => rule;
