/** The options of `carcase measure`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { MeasureOptions } from "./measure.ts";
import { addCommonOptions } from "./options.ts";

export function addMeasure(program: Command): void {
  addCommonOptions(program.command("measure"), "text for people, json or csv for scripts")
    .summary("areas, perimeters and ratios of a traced snout section or lung")
    .description(
      "Measures tracings (SVG or GeoJSON), named themselves or by cases: areas, perimeters, ratios of the conchae, affected shares of lobes.",
    )
    .option("--write", "write what was measured into the cases that name the tracings")
    .option("--dry-run", "with --write: show what would change, as a diff")
    .addHelpText("after", measureHelp)
    .action(call<MeasureOptions>(async () => (await import("./measure.ts")).measure));
}

const measureHelp = `
Examples:
  carcase measure tracings/pig-01.svg
  carcase measure alder-farm/2026-03-14
  carcase measure --write --dry-run alder-farm
Ids of the outlines: cavity-left, dorsal-left, ventral-left, the same on the
right, septum, scale-bar-10-mm; for lungs lobe-left-cranial ... lobe-accessory,
affected-left-cranial-1 ... inside their lobe.`;
