/** What may be typed behind carcase: for the scripts that complete it and the page of the manual, which scripts/build makes. */
import type { Argument, Command, Option } from "commander";
import { clusterNames, facetNames } from "../compare/index.ts";
import { topics } from "../explain/index.ts";
import { lintFormats } from "../formats/lint/formats.ts";
import { papers } from "../formats/sheet/page.ts";
import { clusterKinds, dimensions, groupDimensions } from "../herd/index.ts";
import { agents } from "../knowledge/agents.ts";
import { indicators, protocols, scaleIds, selectionBases } from "../knowledge/index.ts";
import { levels, rules } from "../lint/index.ts";
import { testWords } from "../results/index.ts";
import { schemaKinds } from "../schemas/index.ts";
import { languages } from "../sheet/index.ts";
import { BINOMIAL_METHODS, ROUNDINGS, SHARES_RULES } from "../statistics/index.ts";
import { kinds as comparisons, factors } from "./compare.ts";

/** A command by the words that lead to it, such as `plan/detect`; the program itself is ''. */
export interface Asked {
  readonly path: string;
  readonly command: Command;
}

/** The commands of a command that help shows. */
export const insideOf = (command: Command): readonly Command[] =>
  command
    .createHelp()
    .visibleCommands(command)
    .filter((one) => one.name() !== "help");

/** The program and all its commands. */
export const commandsOf = (command: Command, path = ""): Asked[] => [
  { path, command },
  ...insideOf(command).flatMap((one) => commandsOf(one, path === "" ? one.name() : `${path}/${one.name()}`)),
];

export const optionsOf = (command: Command): readonly Option[] =>
  command.createHelp().visibleOptions(command);

const ruleIds = rules.map(({ id }) => id);
const before = (end: string, words: readonly string[]): string[] => words.map((word) => word + end);

/** By option, where commands differ by command and option. */
const choices: Readonly<Record<string, readonly string[]>> = {
  "--also": before("=", lintFormats),
  "--basis": Object.keys(selectionBases),
  "--between": comparisons,
  "--cluster": clusterKinds,
  "compare --cluster": clusterNames,
  "--even-if": factors,
  "--fail-on": levels,
  "--indicator": [...indicators.keys()],
  "--interval": BINOMIAL_METHODS,
  "--language": languages,
  "--only": ruleIds,
  "--paper": papers,
  "--protocol": [...protocols.keys()],
  "--rounding": ROUNDINGS,
  "--rule": before("=", ruleIds),
  "--scale": scaleIds,
  "--test": SHARES_RULES,
  "samples/results --agent": [...agents.keys()],
  "samples/results --test": testWords,
  "--where": before("=", facetNames),
  "herd --by": [...dimensions, "none"],
  "score --by": groupDimensions,
};

const formats = /\b(?:text|json|csv|markdown|diff|sarif|junit|github|gitlab|html|svg)\b/g;

/** Words that may stand behind an option; "files" or "folders"; nothing where only the veterinarian knows. */
export function valuesOf(
  { path }: Asked,
  option: Option,
): readonly string[] | "files" | "folders" | undefined {
  const name = option.long ?? "";
  if (name === "--format") return option.description.match(formats) ?? [];
  const known = option.argChoices ?? choices[`${path} ${name}`] ?? choices[name];
  if (known !== undefined) return known;
  const what = /(files?|folders?)[\]>]/.exec(option.flags)?.[1];
  return what === undefined ? undefined : what.startsWith("file") ? "files" : "folders";
}

/** The same of the words behind a command. */
export function wordsOf(
  { path }: Asked,
  [argument]: readonly Argument[],
): readonly string[] | "files" | undefined {
  if (argument === undefined) return undefined;
  if (path === "explain") return [...new Set(topics.map(({ name }) => name))];
  if (path === "schema") return Object.keys(schemaKinds);
  if (path === "completion") return shells;
  return "files";
}

export const shells = ["bash", "zsh", "fish"] as const;
