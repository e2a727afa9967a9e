/** What may be typed: all commands with their options and help. */
import { Command, Option } from "commander";
import { visible } from "../words/visible.ts";
import { addAgree } from "./agree-options.ts";
import { checkOutput } from "./call.ts";
import { addCompare } from "./compare-options.ts";
import { addCompletion } from "./completion-options.ts";
import { addConfig } from "./config-options.ts";
import { addDiff } from "./diff-options.ts";
import { addDoctor } from "./doctor-options.ts";
import { addExplain } from "./explain-options.ts";
import { addExport } from "./export-options.ts";
import { addGit, addMergeDriver } from "./git-options.ts";
import { addHerd } from "./herd-options.ts";
import { addImport } from "./import-options.ts";
import { addLint } from "./lint-options.ts";
import { addLog } from "./log-options.ts";
import { addMeasure } from "./measure-options.ts";
import { addMerge } from "./merge-options.ts";
import { addMigrate } from "./migrate-options.ts";
import { addNew } from "./new-options.ts";
import { addNote } from "./note-options.ts";
import { colours } from "./options.ts";
import { addPlan } from "./plan-options.ts";
import { addRecord } from "./record-options.ts";
import { addReport } from "./report-options.ts";
import { addSamples } from "./samples-options.ts";
import { addSchema } from "./schema-options.ts";
import { addScore } from "./score-options.ts";
import { addSeal } from "./seal-options.ts";
import { addSheet } from "./sheet-options.ts";
import { addShow } from "./show-options.ts";
import { speak } from "./streams.ts";
import { addVerify } from "./verify-options.ts";
import { version } from "./version.ts";
import { addWorkup } from "./workup-options.ts";

export function makeProgram(): Command {
  // Commands take over the settings that stand when they are added, so this comes first.
  const program = new Command("carcase")
    .exitOverride()
    .configureOutput({
      writeErr: speak,
      outputError: (message, write) => write(visibleError(message)),
    })
    .description(
      "Case toolkit for the veterinarian who opens pigs: plain YAML case files in, completeness, scores and herd prevalence out.",
    )
    .version(version, "-V, --version", "print the version")
    .helpOption("-h, --help", "show this help")
    .helpCommand("help [command]", "show the help of a command")
    .showSuggestionAfterError(true)
    .showHelpAfterError("(carcase --help shows what can be asked)")
    .addHelpText("after", `${afterHelp}\n`)
    .hook("preAction", (_program, command) => checkOutput(command));
  for (const add of [
    addNew,
    addSheet,
    addRecord,
    addNote,
    addSamples,
    addLint,
    addShow,
    addScore,
    addHerd,
    addMeasure,
    addImport,
    addPlan,
    addAgree,
    addWorkup,
    addCompare,
    addReport,
    addExport,
    addDiff,
    addLog,
    addGit,
    addMergeDriver,
    addExplain,
    addSeal,
    addVerify,
    addMigrate,
    addDoctor,
    addMerge,
    addSchema,
    addConfig,
    addCompletion,
  ])
    add(program);
  addCounterparts(program);
  return program;
}

/** What goes with an option that a command has: `--color` with `--no-color`, which stays for who is used to it, and `--no-config`. */
function addCounterparts(command: Command): void {
  for (const one of command.options) {
    if (one.long === "--no-color") {
      one.hideHelp();
      command.addOption(new Option("--color <when>", "colours").choices(colours).default("auto"));
    } else if (one.long === "--config")
      command.option("--no-config", "no settings file, but the program's own values");
  }
  for (const inside of command.commands) addCounterparts(inside);
}

/** What was typed is shown as texts from files are; only what is meant instead stands on a line of its own. */
function visibleError(message: string): string {
  const [, error = message, meant = ""] = /^(.*?)(\n\(Did you mean [^'"]*\?\))?\n$/s.exec(message) ?? [];
  return `${visible(error)}${meant}\n`;
}

const afterHelp = `
Paths are case files, folders or globs; the default is the current folder, and -
is standard input.
Exit code 0: clean. 1: findings at or above the failing level. 2: wrong usage or
unreadable input.

Knives, saw and axe injure; Streptococcus suis and other agents pass to people;
formalin is toxic. Wear cut-proof and waterproof gloves, eye protection and, for
brain, abortion and saw work, a mask. On suspicion of a notifiable disease stop
and call the competent veterinary authority. Local law and licensed practice
rule.`;
