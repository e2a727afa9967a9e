/** The options of `carcase import`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { ImportOptions } from "./import.ts";
import { addOutput, noColour } from "./options.ts";

export function addImport(program: Command): void {
  addOutput(
    program
      .command("import")
      .argument(
        "[table]",
        "the table, saved by a spreadsheet as CSV or as text with tabs; - for standard input",
      )
      .argument("[folder]", "the folder of the visit; the current folder when left out"),
    "text for people, diff to apply, json for scripts",
  )
    .summary("a tally of many pigs as cases, and the empty table to fill in")
    .description(
      "Reads a table, one row a pig, and shows the cases that it makes. Nothing is written without --write, and then all of it or nothing; a case that is there is never overwritten.",
    )
    .option("--write", "write the cases into the folder")
    .option("--visit <id>", "the name of the visit, where there is no visit.yaml in the folder")
    .option("--date <day>", "the day of the visit, where neither its folder nor the table says it")
    .option("--protocol <name>", "what the examinations cover, for a visit.yaml that is not there yet")
    .option("--empty <pigs>", "print the empty table for so many pigs")
    .option("--columns <names>", "with --empty: columns, organs or systems, separated by commas")
    .option(
      "--semicolons",
      "with --empty: semicolons between the cells, for spreadsheets with decimal commas",
    )
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .addHelpText("after", importHelp)
    .action(call<ImportOptions>(async () => (await import("./import.ts")).importTable));
}

const importHelp = `
Examples:
  carcase import --empty 30 -o tally.csv
  carcase import --empty 12 --columns turbinates,lungs,"milk spots"
  carcase import tally.csv alder-farm/2026-03-14
  carcase import tally.csv alder-farm/2026-03-14 --write
A workbook is no table yet: save the sheet as CSV. The head names values of a
case (lungs consolidation left cranial); for other heads a map is printed, to
paste into carcase.yaml.`;
