/** The program: parses the command line and hands over to one command, which is loaded only then. */
import { Command } from "commander";
import { visible } from "../words/visible.ts";
import { addAgree } from "./agree-options.ts";
import { checkOutput, exitCodeOf, failed } from "./call.ts";
import { addCompare } from "./compare-options.ts";
import { addExplain } from "./explain-options.ts";
import { addHerd } from "./herd-options.ts";
import { addImport } from "./import-options.ts";
import { addLint } from "./lint-options.ts";
import { addMeasure } from "./measure-options.ts";
import { addNew } from "./new-options.ts";
import { addPlan } from "./plan-options.ts";
import { addSchema } from "./schema-options.ts";
import { addScore } from "./score-options.ts";
import { addSheet } from "./sheet-options.ts";
import { cannotWrite, speak } from "./streams.ts";
import { version } from "./version.ts";

function makeProgram(): Command {
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
    addLint,
    addScore,
    addHerd,
    addMeasure,
    addImport,
    addPlan,
    addAgree,
    addCompare,
    addExplain,
    addSchema,
  ])
    add(program);
  return program;
}

/** What was typed is shown as texts from files are; only what is meant instead stands on a line of its own. */
function visibleError(message: string): string {
  const [, error = message, meant = ""] = /^(.*?)(\n\(Did you mean [^'"]*\?\))?\n$/s.exec(message) ?? [];
  return `${visible(error)}${meant}\n`;
}

const afterHelp = `
Paths are case files, folders or globs; the default is the current folder, and - is standard input.
Exit code 0: clean. 1: findings at or above the failing level. 2: wrong usage or unreadable input.

Knives, saw and axe injure; Streptococcus suis and other agents pass to people; formalin is toxic. Wear cut-proof
and waterproof gloves, eye protection and, for brain, abortion and saw work, a mask. On suspicion of a notifiable
disease stop and call the competent veterinary authority. Local law and licensed practice rule.`;

async function main(): Promise<void> {
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    // A reader that has seen enough (head, less) closes the pipe; that is no fault of ours.
    if (error.code === "EPIPE") process.exit(process.exitCode ?? 0);
    process.exit(exitCodeOf(cannotWrite("the result to standard output", error)));
  });
  process.stderr.on("error", (error: NodeJS.ErrnoException) => {
    // Nothing more can be said there; what goes to standard output or into files still does.
    if (error.code !== "EPIPE") process.once("exit", () => (process.exitCode = failed));
  });
  const program = makeProgram();
  try {
    if (process.argv.length <= 2) {
      program.outputHelp({ error: true });
      process.exitCode = failed;
      return;
    }
    await program.parseAsync();
  } catch (error) {
    process.exitCode = exitCodeOf(error);
  }
}

void main();
