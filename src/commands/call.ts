/** Calls a command, which is loaded only then, and says how the call ended. */
import { type Command, CommanderError } from "commander";
import { visible } from "../words/visible.ts";
import type { CommonOptions } from "./options.ts";
import { checkResultFile, isStandardOutput } from "./result-file.ts";
import type { Run } from "./run.ts";
import { asStandardInput } from "./standard-input.ts";
import { speak } from "./streams.ts";
import { UsageError } from "./usage-error.ts";

/** Exit codes: 0 clean, 1 findings at or above the failing level, 2 usage, unreadable input or internal fault. */
export const failed = 2;

let current: { heldNotice(): string } | undefined;

/** @param load gives the command, which returns the exit code */
export const call =
  <Options extends CommonOptions>(load: () => Promise<(run: Run<Options>) => number | Promise<number>>) =>
  async (...given: unknown[]): Promise<void> => {
    const command = given.at(-1) as Command;
    const [runs, started] = await Promise.all([import("./run.ts"), load()]);
    const paths: readonly (string | undefined)[] = command.processedArgs.flat();
    const run = new runs.Run(
      paths.filter((path) => path !== undefined).map(asStandardInput),
      command.opts<Options>(),
    );
    current = run;
    process.exitCode = await started(run);
  };

/** Looks at `--output` before anything is read. @throws UsageError when the result must not go there */
export function checkOutput(command: Command): void {
  const { output, config, baseline, writeBaseline, stdinFilename } = command.opts();
  if (typeof output !== "string") return;
  if (isStandardOutput(output)) command.setOptionValue("output", undefined);
  else
    checkResultFile({ option: `--output ${output}`, file: output }, [
      ...command.args,
      config,
      baseline,
      writeBaseline,
      stdinFilename,
    ]);
}

/** Says what kept a command from its end, after the notice of alarms that then stands in no result. */
export function exitCodeOf(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : failed;
  speak(current?.heldNotice() ?? "");
  if (error instanceof UsageError) speak(`carcase: ${visible(error.message)}\n`);
  else {
    const message = error instanceof Error ? error.message : String(error);
    speak(
      `carcase: internal fault: ${visible(message)}\nPlease report it with the command that led to it.\n`,
    );
    if (process.env.CARCASE_DEBUG !== undefined && error instanceof Error)
      speak(`${String(error.stack).split("\n").map(visible).join("\n")}\n`);
  }
  return failed;
}
