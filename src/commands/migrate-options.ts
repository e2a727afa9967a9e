/** The options of `carcase migrate`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { CommonOptions } from "./options.ts";
import { noColour } from "./options.ts";

export function addMigrate(program: Command): void {
  program
    .command("migrate")
    .argument("[paths...]", "files, folders or globs", ["."])
    .option("--dry-run", "show what would change, as a diff")
    .option("-q, --quiet", "only what needs attention")
    .option(...noColour)
    .summary("writes files of an older format anew in the newest")
    .description(
      "Writes cases, visits, farms, results, settings and scales of an older format anew. Comments, order and layout stay; where one file cannot be written anew without harm, none is.",
    )
    .addHelpText("after", migrateHelp)
    .action(call<CommonOptions>(async () => (await import("./migrate.ts")).migrate));
}

const migrateHelp = `
Examples:
  carcase migrate --dry-run alder-farm
  carcase migrate
Format 1 is the first and the newest, so today it finds nothing to do.`;
