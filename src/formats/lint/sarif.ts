/** SARIF 2.1.0, the exchange format of the OASIS committee of that name, as code scanning services read it. */
import { sourceLine } from "../../knowledge/index.ts";
import { type Finding, levels, type Rule, rules, textsOf } from "../../lint/index.ts";
import { toJson } from "../page/json.ts";
import { fileUri } from "../page/portable-path.ts";
import { fingerprints } from "./fingerprints.ts";
import { type LintReport, reported, unreadableRule } from "./report.ts";

/** GitHub's code scanning shows no more results of one run than this, and refuses a file with more than that. */
export const shownByCodeScanning = 5000;
export const takenByCodeScanning = 25_000;

/** Has those rules alone of which something was found: all of them would be most of a small file. */
export function lintSarif({ result, unreadable, version, at, rulePages }: LintReport): string {
  const all = reported(result, unreadable);
  const taken = theWorst(all);
  const names = fingerprints(taken);
  const found = new Set(taken.map(({ rule }) => rule));
  const descriptors = [
    ...rules.filter(({ id }) => found.has(id)).map((rule) => descriptor(rule, rulePages)),
    ...(found.has(unreadableRule) ? [notRead] : []),
  ];
  const indices = new Map(descriptors.map((one, index) => [one.id, index]));
  const run = {
    tool: {
      driver: {
        name: "carcase",
        version,
        semanticVersion: version,
        rules: descriptors,
      },
    },
    columnKind: "utf16CodeUnits",
    invocations: [
      {
        executionSuccessful: unreadable.length === 0,
        endTimeUtc: at.toISOString(),
        toolExecutionNotifications: tooMany(all.length),
      },
    ],
    results: taken.map((finding, index) => ({
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

/** As many as code scanning takes, in their order: of too many, notes are left out first. */
function theWorst(all: readonly Finding[]): readonly Finding[] {
  if (all.length <= takenByCodeScanning) return all;
  const taken = new Set(
    levels.flatMap((level) => all.filter((one) => one.level === level)).slice(0, takenByCodeScanning),
  );
  return all.filter((one) => taken.has(one));
}

/** @param pages where the practice keeps the pages of rules */
function descriptor(rule: Rule, pages?: string) {
  const { id, level, family } = rule;
  const { summary, protects, source, lookAlike } = textsOf(rule);
  const paragraphs = [
    protects,
    `Looks like it, and is none: ${lookAlike}`,
    `Source: ${sourceLine(source)}`,
    `carcase explain ${id} shows examples.`,
  ];
  return {
    id,
    shortDescription: { text: summary },
    fullDescription: { text: protects },
    ...(pages !== undefined && { helpUri: pages.replace("{rule}", id) }),
    help: { text: paragraphs.join("\n\n") },
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
            text: `${results} results; code scanning shows the first ${shownByCodeScanning} of them, the worst first${results > takenByCodeScanning ? `, and takes ${takenByCodeScanning}: the others are left out here` : ""}.`,
          },
        },
      ];
