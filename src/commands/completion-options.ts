/** The options of `carcase completion`, and the hidden command that its scripts ask for the names of cases. */
import type { Command } from "commander";
import { call } from "./call.ts";

export function addCompletion(program: Command): void {
  program
    .command("completion")
    .argument("<shell>", "bash, zsh or fish")
    .summary("what the Tab key offers in a shell: commands, options, rules, scales, cases")
    .description("Prints the script with which a shell completes what is typed after carcase.")
    .addHelpText("after", completionHelp)
    .action(call(async () => (await import("./completion.ts")).completion));
  program
    .command("names-of-cases", { hidden: true })
    .argument("<begin>")
    .action(call(async () => (await import("./names-of-cases.ts")).namesOfCases));
}

const completionHelp = `
Examples, once for each shell:
  carcase completion bash > ~/.carcase-completion
    and in ~/.bashrc the line . ~/.carcase-completion
  carcase completion zsh > ~/.carcase-completion
    and in ~/.zshrc the same line, after compinit
  carcase completion fish > ~/.config/fish/completions/carcase.fish
After an update of carcase write it again. How to set it up: docs/install.md`;
