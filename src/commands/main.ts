/** The program: parses the command line and hands over to one command, which is loaded only then. */
import { exitCodeOf, failed } from "./call.ts";
import { makeProgram } from "./program.ts";
import { cannotWrite } from "./streams.ts";

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
