/** The options of `carcase report`. */
import type { Command } from "commander";
import { languages } from "../generated/knowledge/languages.ts";
import { listing } from "../words/listing.ts";
import { call } from "./call.ts";
import { noColour } from "./options.ts";
import type { ReportOptions } from "./report.ts";

export function addReport(program: Command): void {
  program
    .command("report")
    .argument("[paths...]", "a case, the folder of a visit or of a farm")
    .option("-o, --output <file>", "write the report to a file, such as report.html")
    .option("-f, --format <format>", "html, markdown, pdf or json", "html")
    .option("--for <reader>", "farm, colleague or laboratory: how deep, never what", "farm")
    .option("--photos <where>", "embed (small, without place and device) or link", "embed")
    .option("--pages <folder>", "the whole archive as pages that open from the disk, with a search")
    .option("--language <language>", listing(languages, "or"), "en")
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("a page for the farm, the colleague or the laboratory")
    .description(
      "Writes one HTML file without scripts that opens anywhere and prints on A4 and Letter: the answer first, then figures, findings, herd numbers, what changed, what was not examined, samples, and what comes next.",
    )
    .addHelpText(
      "after",
      `
Examples:
  carcase report alder-farm/2026-03-14 -o report.html
  carcase report alder-farm --for colleague -o report.html
  carcase report alder-farm --format pdf -o report.pdf
  carcase report --pages pages`,
    )
    .action(call<ReportOptions>(async () => (await import("./report.ts")).report));
}
