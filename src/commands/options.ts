/** Options that every command on cases has. */
import type { Command } from "commander";

/** What every command that prints a result needs. */
export interface OutputOptions {
  readonly format: string;
  readonly output?: string;
  readonly color: boolean;
}

export interface CommonOptions extends OutputOptions {
  readonly quiet?: true;
  readonly config?: string;
  readonly stdinFilename?: string;
}

/** @param formats what the formats of this command are for */
export function addCommonOptions(command: Command, formats = "text for people, json for scripts"): Command {
  return command
    .argument("[paths...]", "case files, folders or globs; - for standard input", ["."])
    .option("--format <format>", formats, "text")
    .option("-o, --output <file>", "write the result to a file instead of the terminal")
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option("--no-color", "no colours (so does the variable NO_COLOR)")
    .option("--stdin-filename <file>", "name and place of the case that comes from standard input");
}
