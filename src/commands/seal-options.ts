/** The options of `carcase seal`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { noColour } from "./options.ts";
import type { SealOptions } from "./seal.ts";

export function addSeal(program: Command): void {
  program
    .command("seal")
    .argument("[paths...]", "cases, visit.yaml, or the folder of a visit for both")
    .usage("[options] <paths...>")
    .option("--by <name>", "who signs")
    .option("--amend", "sign what was changed after it was signed off")
    .option("--because <text>", "with --amend: why it was changed")
    .option("--sign <key-file>", "the file of an SSH key, with which the seal is signed as well")
    .option("--dry-run", "show what would be written, as a diff")
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("signs a case or a visit off, and what was changed since")
    .description(
      "Writes who signed the record, when, and the fingerprints of what it says and of the photographs and tracings that it names.",
    )
    .addHelpText("after", sealHelp)
    .action(call<SealOptions>(async () => (await import("./seal.ts")).seal));
}

const sealHelp = `
Examples:
  carcase seal alder-farm/2026-03-14 --by "A. Berg"
  carcase seal pig-03.yaml --by "A. Berg" --sign ~/.ssh/id_ed25519
  carcase seal pig-03.yaml --amend --by "A. Berg" --because "weight was of the sow"
carcase verify says later what is still as it was signed.`;
