/** Options that several commands have. */
import type { Command } from "commander";

export interface CommonOptions {
  readonly format: string;
  readonly output?: string;
  /** False for --no-color. */
  readonly color: Colour | false;
  readonly quiet?: true;
  /** False for --no-config. */
  readonly config?: string | false;
  readonly stdinFilename?: string;
}

/** What every command on cases has. @param formats what the formats of this command are for */
export const addCommonOptions = (command: Command, formats: string, format?: string): Command =>
  addOutput(
    command.argument("[paths...]", "case files, folders or globs; - for standard input", ["."]),
    formats,
    format,
  )
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .option("--stdin-filename <file>", "name and place of the case that comes from standard input");

/** Where the result goes, and in which format: the first unless asked. */
export const addOutput = (command: Command, formats: string, format = "text"): Command =>
  command
    .option("--format <format>", formats, format)
    .option("-o, --output <file>", "write the result to a file instead of the terminal");

/** On a terminal alone unless the environment says otherwise; always; never. */
export const colours = ["auto", "always", "never"] as const;
export type Colour = (typeof colours)[number];

export const noColour = ["--no-color", "no colours (so does the variable NO_COLOR)"] as const;

/** Gathers the values of an option that may be given again. */
export const collect = (value: string, before: readonly string[] = []): readonly string[] => [
  ...before,
  value,
];
