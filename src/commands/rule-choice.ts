/** `--only` and `--rule`: which rules are asked, and at which level they speak. */
import { unknownName } from "../cases/index.ts";
import { type Level, type LintOptions, levels, type Rule, rules } from "../lint/index.ts";
import { idList } from "./lists.ts";
import { UsageError } from "./usage-error.ts";

export interface RuleChoiceOptions {
  readonly only?: readonly string[];
  readonly rule?: readonly string[];
}

export interface RuleChoice {
  readonly options: LintOptions;
  /** The rules that `--only` names, without the alarms, which are asked all the same. */
  readonly named?: readonly string[];
  /** Whether every rule is asked, as far as the command line decides. */
  readonly all: boolean;
}

/** @throws UsageError for names that do not exist, and for rules that nobody can lower */
export function ruleChoice({ only, rule = [] }: RuleChoiceOptions): RuleChoice {
  const changed = Object.fromEntries(rule.map(ruleLevel));
  const levels = { levels: changed };
  if (only === undefined) return { options: levels, all: !Object.values(changed).includes("off") };
  const named = onlyRules(only.join(","));
  return { options: { ...levels, only: [...named, ...alarmRules()] }, named, all: false };
}

/** Alarms are asked whatever was chosen: no option silences them. */
const alarmRules = (): string[] => rules.filter(({ family }) => family === "alarm").map(({ id }) => id);

function onlyRules(text: string): string[] {
  const { ids = [] } = idList("ids", text);
  if (ids.length === 0) throw new UsageError("--only names no rule; write --only skipped-organ,lobe-missing");
  return [...new Set(ids.map((id) => known("--only", id).id))];
}

function ruleLevel(text: string): [string, Level | "off"] {
  const [, id = "", name = ""] = /^([^=]*)=(.*)$/.exec(text) ?? [];
  if (id === "") throw new UsageError(`--rule ${text}: write rule=level, such as --rule treated-pig=note`);
  const rule = known("--rule", id.trim());
  const all = [...levels, "off"] as const;
  const level = all.find((one) => one === name.trim());
  if (level === undefined) throw new UsageError(`--rule ${text}: ${unknownName(name, all, "level")}`);
  if (rule.locked)
    throw new UsageError(
      `--rule ${text}: ${rule.id} guards the alarms or the format and stays ${rule.level}`,
    );
  return [rule.id, level];
}

function known(option: string, id: string): Rule {
  const rule = rules.find((one) => one.id === id);
  if (rule !== undefined) return rule;
  const ids = rules.map((one) => one.id);
  throw new UsageError(`${option}: ${unknownName(id, ids, "rule")}`);
}
