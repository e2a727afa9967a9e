/** The options of `carcase export`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { ExportOptions } from "./export.ts";
import { noColour } from "./options.ts";

export function addExport(program: Command): void {
  program
    .command("export")
    .argument("[paths...]", "case files, folders or globs", ["."])
    .option("-o, --output <folder>", "the folder for the tables, written as a whole")
    .option("--format <format>", "csv, ndjson, or parquet in folders by farm and year", "csv")
    .option("--pseudonymise <keyfile>", "pseudonyms for all names; free text and photographs left out")
    .option("--new-key", "make that key first, in a file that is not there yet")
    .option("--keep-days", "with pseudonyms: leave days as they are")
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("cases, findings, scores, samples, results and estimates as tables for other programs")
    .description(
      "Writes tidy tables of all that is recorded and worked out, with a data dictionary: what each column means, its unit, its words, and where its value comes from.",
    )
    .addHelpText("after", exportHelp)
    .action(call<ExportOptions>(async () => (await import("./export.ts")).exportTables));
}

const exportHelp = `
Examples:
  carcase export alder-farm -o tables
  carcase export . --format parquet -o tables
  carcase export . --pseudonymise ~/keys/carcase.key --new-key -o shared
One key gives the same pseudonyms again, and without it nobody can tell what
they stand for. All days of a farm move by one number of days. Pseudonyms are no
anonymity: docs/export.md says what is left out, moved and kept.`;
