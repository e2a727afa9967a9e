import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const protocolContradictsDeath: CaseRule = {
  id: "protocol-contradicts-death",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "The protocol is one for a pig that died this way.",
  protects:
    "For a pig killed for its signs, the protocol of the slaughter line asks for only seven organs, and nobody misses the rest.",
  lookAlike:
    "A pluck of a pig that died in the lairage, or on the lorry: it was not slaughtered, so write protocol: respiratory and found-dead.",
  source: practice("the manner of death that each protocol is for"),
  bad: { case: "protocol: slaughter-check" },
  good: { case: "protocol: respiratory" },
  check(one, report) {
    const manner = one.record.death?.manner;
    const { id, title, manners } = one.protocol;
    if (one.unknownProtocol !== undefined || manner === undefined || manners === undefined) return;
    if (!manners.includes(manner))
      report(
        `protocol: ${id} (${title.toLowerCase()}) is for pigs that were ${listing(manners, "or")}, and death.manner is ${manner}. Write protocol: full, or the one for its signs, or correct the manner.`,
        one.record.protocol === undefined ? ["death", "manner"] : ["protocol"],
      );
  },
};
