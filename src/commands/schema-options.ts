/** The options of `carcase schema`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addOutput, noColour } from "./options.ts";
import type { SchemaOptions } from "./schema.ts";

export function addSchema(program: Command): void {
  addOutput(
    program
      .command("schema")
      .argument("[kind]", "case, visit, farm, settings or scale: print this schema; default: list them"),
    "text for people, json for scripts; a schema is always JSON",
  )
    .option("--write <folder>", "write the schemas into a folder, such as schemas")
    .option(...noColour)
    .summary("schemas with which an editor completes and checks what you type")
    .description(
      "Lists, prints or writes the schemas with which an editor completes keys and words and underlines what does not fit.",
    )
    .addHelpText("after", schemaHelp)
    .action(call<SchemaOptions>(async () => (await import("./schema.ts")).schema));
}

const schemaHelp = `
Examples:
  carcase schema                    each kind of file, with the line for its top
  carcase schema --write schemas    the schemas into the folder schemas
  carcase schema case               the schema of a case
How to set up an editor: docs/editors.md`;
