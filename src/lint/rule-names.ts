/** Names of rules, as options and settings write them. */
import { type Settings, unknownName } from "../cases/index.ts";
import type { Rule } from "./rule.ts";
import { rules } from "./rules/index.ts";

/** A rule was named that does not exist. The message says where it stands and which name is near. */
export class UnknownRule extends RangeError {}

/** Ids of rules that are gone, and the rule that asks instead, if any does; none is ever given to another rule. */
export const goneRules: Readonly<Record<string, string | undefined>> = {
  "authority-without-answer": "authority-entry-incomplete",
  "colour-contradiction": "process-impossible",
  "consistency-contradiction": "process-impossible",
  "consolidation-without-lobes": "observation-parts-disagree",
  "crown-rump-of-born-pig": "observation-impossible",
  "culture-of-treated-pig": "treated-pig",
  "diagnosis-against-severity": "diagnosis-against-finding",
  "diagnosis-without-organ": undefined,
  "duration-contradiction": "process-impossible",
  "enlargement-unmeasured": "finding-without-size",
  "exudate-contradiction": "process-impossible",
  "fixed-piece-thick": "fixed-piece-too-thick",
  "fluid-without-volume": "finding-without-size",
  "interpretation-in-description": undefined,
  "mummy-cultured": "test-impossible",
  "normal-note-contradiction": "normal-with-finding",
  "one-organ-sampled": "lesion-not-sampled",
  "pleurisy-adhesion-unscored": "observation-parts-disagree",
  "septum-contradicts-finding": "observation-parts-disagree",
  "serology-from-tissue": "test-impossible",
  "simile-in-description": undefined,
  "tag-unquoted": "case-format",
  "wanted-organ-blank": "skipped-organ",
};

/** @throws UnknownRule */
export function ruleNamed(id: string, where = ""): Rule {
  const rule = rules.find((one) => one.id === id);
  if (rule !== undefined) return rule;
  if (Object.hasOwn(goneRules, id)) {
    const instead = goneRules[id];
    throw new UnknownRule(
      `${where}the rule "${id}" is gone; ${instead === undefined ? "nothing asks that any more, so take its name out" : `${instead} asks instead`}.`,
    );
  }
  const ids = rules.map((one) => one.id);
  throw new UnknownRule(`${where}${unknownName(id, ids, "rule")}`);
}

/** Settings, as far as they give levels to rules. */
export type NamedRules = Pick<Settings, "file" | "rules">;

/** @throws UnknownRule when settings name a rule that does not exist */
export function checkRulesOf({ file, rules: named }: NamedRules): void {
  for (const id of Object.keys(named)) ruleNamed(id, `${file}: rules: `);
}
