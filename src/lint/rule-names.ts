/** Names of rules, as options and settings write them. */
import { type Case, unknownName } from "../cases/index.ts";
import type { Rule } from "./rule.ts";
import { rules } from "./rules/index.ts";

/** A rule was named that does not exist. The message says where it stands and which name is near. */
export class UnknownRule extends RangeError {}

/** @throws UnknownRule */
export function ruleNamed(id: string, where = ""): Rule {
  const rule = rules.find((one) => one.id === id);
  if (rule !== undefined) return rule;
  const ids = rules.map((one) => one.id);
  throw new UnknownRule(`${where}${unknownName(id, ids, "rule")}`);
}

interface Named {
  readonly only?: readonly string[];
  readonly levels?: Readonly<Record<string, unknown>>;
}

/** @throws UnknownRule when the options, or the settings of a case, name a rule that does not exist */
export function checkRuleNames(cases: readonly Case[], { only = [], levels = {} }: Named = {}): void {
  for (const id of [...only, ...Object.keys(levels)]) ruleNamed(id);
  for (const { file, rules: named } of new Set(cases.map((one) => one.settings)))
    for (const id of Object.keys(named)) ruleNamed(id, `${file}: rules: `);
}
