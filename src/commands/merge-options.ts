/** The options of `carcase merge`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { MergeOptions } from "./merge.ts";
import { addOutput, noColour } from "./options.ts";

export function addMerge(program: Command): void {
  addOutput(
    program
      .command("merge")
      .argument("<parts...>", "the results of lint --shard or herd --shard, all of them"),
    "json, as the one run would give it",
    "json",
  )
    .option(...noColour)
    .summary("the results of parts of an archive (--shard) as those of one run")
    .description(
      "Puts the results of all parts together, to the byte as one run over the whole archive gives them.",
    )
    .addHelpText("after", mergeHelp)
    .action(call<MergeOptions>(async () => (await import("./merge.ts")).merge));
}

const mergeHelp = `
Examples:
  carcase lint --shard 1/2 --format json -o part-1.json .
  carcase lint --shard 2/2 --format json -o part-2.json .
  carcase merge part-1.json part-2.json
With many machines: docs/engines.md`;
