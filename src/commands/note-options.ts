/** The options of `carcase note`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { NoteOptions } from "./note.ts";
import { noColour } from "./options.ts";

export function addNote(program: Command): void {
  program
    .command("note")
    .argument("[case]", "the case file")
    .argument("[note...]", "what you see, in quotes: organ, finding, and how it looks; parts separated by ;")
    .usage("[options] <case> <note...>")
    .option("--write", "write it into the case")
    .option("--partly", "take what was understood, where not all was")
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("one line of trade words becomes a checked entry")
    .description(
      "Reads a note by the words of the format and their other names, English, German and Spanish, and shows the entry that it becomes. Nothing is guessed.",
    )
    .addHelpText("after", noteHelp)
    .action(call<NoteOptions>(async () => (await import("./note.ts")).note));
}

const noteHelp = `
Examples:
  carcase note pig-03.yaml "lungs consolidation cv 15 % left middle, 10 right middle"
  carcase note pig-03.yaml "bronchial nodes enlarged 20 mm firm tan; spleen normal" --write
  carcase note pig-03.yaml "Milz vergrössert dunkelrot; Nieren Petechien" --write`;
