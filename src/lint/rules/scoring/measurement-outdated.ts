import { readInput } from "../../../cases/files/input.ts";
import { formatPath, valueAt } from "../../../cases/index.ts";
import { caseTracings } from "../../../measure/case-tracings.ts";
import { besideCase, isAbsent, isElsewhere } from "../../../record/index.ts";
import { sha256 } from "../../../words/sha256.ts";
import { type CaseRule, practice } from "../../rule.ts";

const laid = (fingerprint: string): string =>
  `respiratory: {turbinates: {tracing: tracings/pig-01.svg, measured: {tracing: tracings/pig-01.svg, sha256: ${fingerprint}}}}`;

export const measurementOutdated: CaseRule = {
  id: "measurement-outdated",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "Measurements belong to the tracing as it is now.",
  protects:
    "Ratios of an outline that has since been corrected would be taken for those of the corrected one.",
  lookAlike:
    "A tracing that was only saved again by another program: the file differs all the same; carcase measure --write gives the same ratios and a new fingerprint.",
  source: practice(
    "the fingerprint (SHA-256) of the file that was measured; common practice of filing: a result goes with its source",
  ),
  bad: {
    case: laid("d7a8fbb307d7809469ca9abcb0082e4f8d5651e46d3cdb762d02d0bf37c9e592"),
    files: ["tracings/pig-01.svg"],
  },
  good: {
    case: laid("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
    files: ["tracings/pig-01.svg"],
  },
  check(one, report) {
    for (const { tracing, path } of caseTracings(one)) {
      const at = [...path, "measured"];
      const measured = valueAt(one.record, at);
      const recorded = valueAt(measured, ["sha256"]);
      if (recorded === undefined || isElsewhere(tracing) || isAbsent(one, tracing)) continue;
      const from = valueAt(measured, ["tracing"]);
      const again = "Run carcase measure --write on this case.";
      if (from !== undefined && from !== tracing)
        report(
          `${formatPath(at)}: measured from ${String(from)}, but the tracing is now ${tracing}. ${again}`,
          [...at, "tracing"],
        );
      else if (recorded !== fingerprint(besideCase(one, tracing)))
        report(`${formatPath(at)}: the tracing ${tracing} was changed after it was measured. ${again}`, [
          ...at,
          "sha256",
        ]);
    }
  },
};

/** @returns undefined for what cannot be read or is no plain file: it fits no measurement */
function fingerprint(file: string): string | undefined {
  const read = readInput(file);
  return read.ok ? sha256(read.bytes) : undefined;
}
