/** SARIF 2.1.0, the exchange format of the OASIS committee of that name, as code scanning services read it. */
import { sourceLine } from "../../knowledge/index.ts";
import { type Finding, type Rule, rules, textsOf } from "../../lint/index.ts";
import { toJson } from "../page/json.ts";
import { fileUri } from "../page/portable-path.ts";
import { fingerprints } from "./fingerprints.ts";
import { type LintReport, reported, unreadableRule } from "./report.ts";

/** GitHub's code scanning shows no more results of one run than this. */
export const shownByCodeScanning = 5000;

export function lintSarif({ result, unreadable, version, at }: LintReport): string {
  const all = reported(result, unreadable);
  const names = fingerprints(all);
  const descriptors = [...rules.map(descriptor), notRead];
  const indices = new Map(descriptors.map((one, index) => [one.id, index]));
  const run = {
    tool: { driver: { name: "carcase", version, semanticVersion: version, rules: descriptors } },
    columnKind: "utf16CodeUnits",
    invocations: [
      {
        executionSuccessful: unreadable.length === 0,
        endTimeUtc: at.toISOString(),
        toolExecutionNotifications: tooMany(all.length),
      },
    ],
    results: all.map((finding, index) => ({
      ruleId: finding.rule,
      ruleIndex: indices.get(finding.rule) ?? -1,
      level: finding.level,
      message: { text: finding.message },
      locations: [location(finding)],
      // The one name that code scanning reads; others are free to use it too.
      partialFingerprints: { primaryLocationLineHash: `${names[index]}:1` },
    })),
  };
  const log = { $schema: "https://json.schemastore.org/sarif-2.1.0.json", version: "2.1.0", runs: [run] };
  return toJson(log);
}

function descriptor(rule: Rule) {
  const { id, level, family } = rule;
  const { summary, protects, source } = textsOf(rule);
  const help = `${protects}\n\nSource: ${sourceLine(source)}\n\ncarcase explain ${id} shows examples.`;
  return {
    id,
    shortDescription: { text: summary },
    fullDescription: { text: protects },
    help: { text: help },
    defaultConfiguration: { level },
    properties: { tags: [family] },
  };
}

const notRead: ReturnType<typeof descriptor> = {
  id: unreadableRule,
  shortDescription: { text: "Every file can be read." },
  fullDescription: { text: "Nothing was checked in a file that could not be read." },
  help: { text: "Put the file right at the place shown, and run carcase lint again." },
  defaultConfiguration: { level: "error" },
  properties: { tags: ["format"] },
};

function location({ file, line, column, length, path }: Finding) {
  const region = { startLine: line, startColumn: column, endLine: line, endColumn: column + length };
  return {
    physicalLocation: {
      artifactLocation: { uri: fileUri(file) },
      ...(line === 0 ? {} : { region }),
    },
    ...(path === "" ? {} : { logicalLocations: [{ fullyQualifiedName: path }] }),
  };
}

const tooMany = (results: number): object[] =>
  results <= shownByCodeScanning
    ? []
    : [
        {
          level: "note",
          message: {
            text: `${results} results; code scanning shows the first ${shownByCodeScanning} of them, the worst first.`,
          },
        },
      ];
