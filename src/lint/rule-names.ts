/** Names of rules, as options and settings write them. */
import { type Settings, unknownName } from "../cases/index.ts";
import type { Rule } from "./rule.ts";
import { rules } from "./rules/index.ts";

/** A rule was named that does not exist. The message says where it stands and which name is near. */
export class UnknownRule extends RangeError {}

/** Ids of rules that are gone, and the rule that asks instead; none is ever given to another rule. */
export const goneRules: Readonly<Record<string, string>> = {
  "authority-without-answer": "authority-entry-incomplete",
  "enlargement-unmeasured": "finding-without-size",
  "fluid-without-volume": "finding-without-size",
};

/** @throws UnknownRule */
export function ruleNamed(id: string, where = ""): Rule {
  const rule = rules.find((one) => one.id === id);
  if (rule !== undefined) return rule;
  const instead = Object.hasOwn(goneRules, id) ? goneRules[id] : undefined;
  if (instead !== undefined)
    throw new UnknownRule(`${where}the rule "${id}" is gone; ${instead} asks instead.`);
  const ids = rules.map((one) => one.id);
  throw new UnknownRule(`${where}${unknownName(id, ids, "rule")}`);
}

/** Settings, as far as they give levels to rules. */
export type NamedRules = Pick<Settings, "file" | "rules">;

/** @throws UnknownRule when settings name a rule that does not exist */
export function checkRulesOf({ file, rules: named }: NamedRules): void {
  for (const id of Object.keys(named)) ruleNamed(id, `${file}: rules: `);
}
