/** Options that every command on cases has. */
import type { Command } from "commander";

export interface CommonOptions {
  readonly format: string;
  readonly output?: string;
  readonly quiet?: true;
  readonly config?: string;
  readonly color: boolean;
  readonly stdinFilename?: string;
}

export function addCommonOptions(command: Command): Command {
  return command
    .argument("[paths...]", "case files, folders or globs; - for standard input", ["."])
    .option("--format <format>", "text for people, json for scripts", "text")
    .option("-o, --output <file>", "write the result to a file instead of the terminal")
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option("--no-color", "no colours (so does the variable NO_COLOR)")
    .option("--stdin-filename <file>", "name and place of the case that comes from standard input");
}
