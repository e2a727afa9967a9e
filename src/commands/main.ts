/** The program: parses the command line and hands over to one command, which is loaded only then. */
import { Command, CommanderError } from "commander";
import { visible } from "../words/visible.ts";
import { addAgree } from "./agree-options.ts";
import { addCompare } from "./compare-options.ts";
import { heldNotice } from "./held-notice.ts";
import { addHerd } from "./herd-options.ts";
import { addLintOptions, type LintCommandOptions } from "./lint-options.ts";
import type { MeasureOptions } from "./measure.ts";
import { addCommonOptions, type OutputOptions } from "./options.ts";
import { addPlan } from "./plan-options.ts";
import { checkResultFile, isStandardOutput } from "./result-file.ts";
import { addScoreOptions, type ScoreCommandOptions, scoreFormatHelp } from "./score-options.ts";
import { UsageError } from "./usage-error.ts";
import { version } from "./version.ts";
import { cannotWrite } from "./write-file.ts";

/** Exit codes: 0 clean, 1 findings at or above the failing level, 2 usage, unreadable input or internal fault. */
const failed = 2;

function makeProgram(): Command {
  // Commands take over the settings that stand when they are added, so this comes first.
  const program = new Command("carcase")
    .exitOverride()
    .description(
      "Case toolkit for the veterinarian who opens pigs: plain YAML case files in, completeness, scores and herd prevalence out.",
    )
    .version(version, "-V, --version", "print the version")
    .helpOption("-h, --help", "show this help")
    .helpCommand("help [command]", "show the help of a command")
    .showSuggestionAfterError(true)
    .showHelpAfterError("(carcase --help shows what can be asked)")
    .addHelpText("after", `${afterHelp}\n`)
    .hook("preAction", (_program, command) => {
      const { output, config, baseline, writeBaseline } = command.opts();
      if (typeof output !== "string") return;
      if (isStandardOutput(output)) command.setOptionValue("output", undefined);
      else checkResultFile("--output", output, [...command.args, config, baseline, writeBaseline]);
    });

  addLintOptions(addCommonOptions(program.command("lint"), lintFormatHelp))
    .summary("what was skipped, contradictory or unsafe, at which line?")
    .description(
      "Checks cases: skipped systems and organs, missing sides and lobes, missing history, contradictions.",
    )
    .addHelpText("after", lintHelp)
    .action(async (paths: string[], options: LintCommandOptions) => {
      const { runLint } = await import("./lint.ts");
      process.exitCode = await runLint(paths, options);
    });
  addScoreOptions(addCommonOptions(program.command("score"), scoreFormatHelp))
    .summary("what does each published scale make of each pig?")
    .description(
      "Computes published gross scores from what was observed, and says which observations are missing.",
    )
    .addHelpText("after", scoreHelp)
    .action(async (paths: string[], options: ScoreCommandOptions) => {
      const { runScore } = await import("./score.ts");
      process.exitCode = await runScore(paths, options);
    });
  addHerd(program);
  addCommonOptions(program.command("measure"), "text for people, json or csv for scripts")
    .summary("areas, perimeters and ratios of a traced snout section or lung")
    .description(
      "Measures tracings (SVG or GeoJSON), named themselves or by cases: areas, perimeters, ratios of the conchae, affected shares of lobes.",
    )
    .option("--write", "write what was measured into the cases that name the tracings")
    .option("--dry-run", "with --write: show what would change, as a diff")
    .addHelpText("after", measureHelp)
    .action(async (paths: string[], options: MeasureOptions) => {
      const { runMeasure } = await import("./measure.ts");
      process.exitCode = runMeasure(paths, options);
    });
  addPlan(program);
  addAgree(program);
  addCompare(program);
  program
    .command("explain")
    .argument("[name]", "a rule, scale, protocol, organ, sign, word, indicator, alarm ...; default: list all")
    .summary("what is this rule, scale, organ or word, and who says so?")
    .description("Explains a name: what it means, where it comes from, how sure that is.")
    .option("--format <format>", "text for people, json for scripts", "text")
    .option("-o, --output <file>", "write the result to a file instead of the terminal")
    .option(
      "--config <file>",
      "settings file that names scales of your own; default: the nearest carcase.yaml",
    )
    .option("--no-color", "no colours (so does the variable NO_COLOR)")
    .addHelpText("after", explainHelp)
    .action(async (name: string | undefined, options: OutputOptions & { config?: string }) => {
      const { runExplain } = await import("./explain.ts");
      process.exitCode = await runExplain(name, options);
    });
  return program;
}

const lintFormatHelp =
  "text for people; json, sarif, junit, github or gitlab for scripts and continuous integration";

const afterHelp = `
Paths are case files, folders or globs; the default is the current folder, and - is standard input.
Exit code 0: clean. 1: findings at or above the failing level. 2: wrong usage or unreadable input.

Knives, saw and axe injure; Streptococcus suis and other agents pass to people; formalin is toxic. Wear cut-proof
and waterproof gloves, eye protection and, for brain, abortion and saw work, a mask. On suspicion of a notifiable
disease stop and call the competent veterinary authority. Local law and licensed practice rule.`;

const lintHelp = `
Examples:
  carcase lint                          all cases below the current folder
  carcase lint alder-farm/2026-03-14    one visit
  carcase lint --format json .          for scripts
  carcase lint --fix --dry-run .        what would be put right
  carcase lint --also sarif=carcase.sarif --also junit=carcase.xml .
Every name in brackets can be explained: carcase explain skipped-organ`;

const explainHelp = `
Examples:
  carcase explain skipped-organ
  carcase explain maff-1978
  carcase explain lungs`;

const measureHelp = `
Examples:
  carcase measure tracings/pig-01.svg
  carcase measure alder-farm/2026-03-14
  carcase measure --write --dry-run alder-farm
Ids of the outlines: cavity-left, dorsal-left, ventral-left, the same on the right, septum, scale-bar-10-mm;
for lungs lobe-left-cranial ... lobe-accessory, affected-left-cranial-1 ... inside their lobe.`;

const scoreHelp = `
Examples:
  carcase score alder-farm/2026-03-14
  carcase score --scale maff-1978,dottori-2007 .
  carcase score --by group alder-farm
  carcase score --matrix alder-farm/2026-03-14
  carcase score --format csv -o scores.csv .
A value marked * rests on a definition from memory that was not checked against its source.`;

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

function exitCodeOf(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : failed;
  process.stderr.write(heldNotice());
  if (error instanceof UsageError) process.stderr.write(`carcase: ${visible(error.message)}\n`);
  else {
    const message = error instanceof Error ? error.message : String(error);
    process.stderr.write(
      `carcase: internal fault: ${message}\nPlease report it with the command that led to it.\n`,
    );
    if (process.env.CARCASE_DEBUG !== undefined && error instanceof Error)
      process.stderr.write(`${error.stack}\n`);
  }
  return failed;
}

void main();
