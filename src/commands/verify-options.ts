/** The options of `carcase verify`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addCommonOptions } from "./options.ts";
import type { VerifyOptions } from "./verify.ts";

export function addVerify(program: Command): void {
  addCommonOptions(program.command("verify"), "text for people, json for scripts")
    .summary("what is still as it was signed off, what was amended, what was changed?")
    .description(
      "Compares each case and visit with its seal, and the photographs and tracings that it names with those that were sealed.",
    )
    .option("--signers <file>", "who may sign: each seal must have the signature of one of them")
    .option("--all", "every record must be sealed")
    .addHelpText("after", verifyHelp)
    .action(call<VerifyOptions>(async () => (await import("./verify.ts")).verify));
}

const verifyHelp = `
Examples:
  carcase verify alder-farm
  carcase verify --all --signers signers.txt
A line of signers.txt names one who may sign and the key, as OpenSSH has it:
  a.berg namespaces="carcase-seal" ssh-ed25519 AAAA...
Exit code 0: all that is sealed is as it was signed. 1: something is not.`;
