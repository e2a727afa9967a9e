/** Rules as the linter asks them: family by family, by name, and silent where they must not speak. */
import { families, type Rule } from "./rule.ts";
import { silenced } from "./shared/silence.ts";

export const arranged = (rules: readonly Rule[]): readonly Rule[] =>
  rules
    .map(silenced)
    .sort((a, b) => families.indexOf(a.family) - families.indexOf(b.family) || (a.id < b.id ? -1 : 1));
