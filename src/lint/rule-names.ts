/** Names of rules, as options and settings write them. */
import { type Settings, unknownName } from "../cases/index.ts";
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

/** @throws UnknownRule when settings name a rule that does not exist */
export function checkRulesOf({ file, rules: named }: Settings): void {
  for (const id of Object.keys(named)) ruleNamed(id, `${file}: rules: `);
}
