import { unknownName } from "../../../cases/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const protocolUnknown: CaseRule = {
  id: "protocol-unknown",
  scope: "case",
  family: "format",
  level: "error",
  summary: "The protocol that a case names exists.",
  protects: "The protocol says which organs are due; under an unknown one nothing could be called complete.",
  lookAlike:
    "A protocol of your own: it counts once it stands under protocols in carcase.yaml, and the case lies below that file.",
  source: practice("protocols of this project and of carcase.yaml"),
  bad: { case: "protocol: ful" },
  good: { case: "protocol: full" },
  check(one, report) {
    if (one.unknownProtocol !== undefined)
      report(
        `protocol: ${unknownName(one.unknownProtocol, [...one.settings.protocols.keys()], "protocol")}`,
        ["protocol"],
      );
  },
};
