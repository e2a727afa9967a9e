/** The options of `carcase samples` and its questions. */
import type { Command } from "commander";

/** Adds the command with its subcommands; what computes is loaded only when asked. */
export function addSamples(program: Command): void {
  program
    .command("samples")
    .summary("samples: what to take, what was taken, what came back")
    .description("Samples from the knife to the laboratory's answer.");
}
