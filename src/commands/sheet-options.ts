/** The options of `carcase sheet`. */
import type { Command } from "commander";
import { languages } from "../generated/knowledge/languages.ts";
import { listing } from "../words/listing.ts";
import { call } from "./call.ts";
import { wishOptions } from "./new-options.ts";
import { noColour } from "./options.ts";
import type { SheetOptions } from "./sheet.ts";

export function addSheet(program: Command): void {
  const command = program
    .command("sheet")
    .argument("[paths...]", "case files or the folder of a visit; with --pigs, the folder of a visit to come")
    .option("-o, --output <file>", "write the sheet to a file, such as sheet.html")
    .option("--tally", "one page for thirty snouts and lungs instead of a sheet a pig")
    .option("--csv", "with --tally: the same as an empty table for carcase import")
    .option("--paper <size>", "a4 or letter", "a4")
    .option("--language <language>", listing(languages, "or"), "en");
  for (const option of wishOptions) if (!option[0].startsWith("--head")) command.option(...option);
  command
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("the sheet for the table, to print")
    .description(
      "Prints sheets for the table as one HTML file: cautions, what is due in the order of the knife, outlines of snout and lungs to shade, samples. Open it in a browser and print it.",
    )
    .addHelpText("after", sheetHelp)
    .action(call<SheetOptions>(async () => (await import("./sheet.ts")).sheet));
}

const sheetHelp = `
Examples:
  carcase sheet alder-farm/2026-03-14 -o sheet.html
  carcase sheet --pigs 4 --signs sneezing --healthy 2 --age "58 d" --language de -o bogen.html
  carcase sheet --tally --pigs 30 --paper letter -o tally.html
  carcase sheet --tally --pigs 30 --csv -o tally.csv`;
