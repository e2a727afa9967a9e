/**
 * A baseline: the findings that an old archive already had, so that only new ones count. Findings are known by file,
 * rule and path, and how many there are; never by line.
 */
import { errorsOf } from "../cases/faults/full-validator.ts";
import { schemaFaults } from "../cases/faults/schema-faults.ts";
import { otherFormat } from "../cases/files/format-version.ts";
import { isKeyed } from "../cases/model/path.ts";
import type { BaselineEntry, BaselineFile } from "../generated/baseline.types.ts";
import type { Finding } from "./finding.ts";
import type { LintResult } from "./linter.ts";
import { rules } from "./rules/index.ts";
import { findingCounts } from "./summary.ts";

export type Baseline = BaselineFile;

/** The name of a file in a baseline: its path from the folder of the baseline, with `/`. */
export type FileKey = (file: string) => string;

/** Some editors put it before the first letter. */
const byteOrderMark = /^\ufeff/;

/**
 * Reads the text of a baseline, with or without byte order mark.
 * @returns the baseline, or what is wrong with the text
 */
export function parseBaseline(text: string): Baseline | string {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(byteOrderMark, ""));
  } catch {
    return "it is not JSON";
  }
  const other = isKeyed(value) ? otherFormat(value) : undefined;
  if (other !== undefined) return other;
  const errors = errorsOf("baseline", value);
  if (errors.length === 0) return value as Baseline;
  return schemaFaults(errors, value)[0]?.message ?? "it is not a baseline";
}

export const formatBaseline = (baseline: Baseline): string => `${JSON.stringify(baseline, null, 2)}\n`;

/** The findings of today as a baseline. Locked rules are never in it. */
export function makeBaseline(findings: readonly Finding[], paths: readonly string[], key: FileKey): Baseline {
  const entries = new Map<string, BaselineEntry>();
  for (const finding of findings.filter(canBeKnown)) {
    const { rule, path } = finding;
    const file = key(finding.file);
    const id = identity({ file, rule, path });
    entries.set(id, { file, rule, path, count: (entries.get(id)?.count ?? 0) + 1 });
  }
  const first = (paths.length === 0 ? ["."] : [...new Set(paths.map(key))].sort()) as [string, ...string[]];
  return { format: 1, paths: first, findings: sorted([...entries.values()]) };
}

/** What a baseline makes of a result. */
export interface AgainstBaseline {
  /** Without the findings that the baseline knows. */
  readonly result: LintResult;
  /** How many findings of the baseline no longer occur, although they would have been found. */
  readonly stale: number;
  /** The baseline without them. It never holds more than before. */
  readonly remaining: Baseline;
}

/**
 * Takes the findings that a baseline knows out of a result.
 * @param unasked whether nothing can be concluded from the absence of an entry (see `unaskedEntries`); such entries stay
 */
export function againstBaseline(
  result: LintResult,
  baseline: Baseline,
  key: FileKey,
  unasked: (entry: BaselineEntry) => boolean = () => false,
): AgainstBaseline {
  const known = new Map<string, number>();
  // An entry that stands twice, as after a merge, counts once.
  for (const entry of baseline.findings)
    known.set(identity(entry), Math.max(entry.count, known.get(identity(entry)) ?? 0));
  const met = new Map<string, number>();
  const findings = result.findings.filter((finding) => {
    const id = identity({ file: key(finding.file), rule: finding.rule, path: finding.path });
    const before = met.get(id) ?? 0;
    if (!canBeKnown(finding) || before >= (known.get(id) ?? 0)) return true;
    met.set(id, before + 1);
    return false;
  });
  const remaining = new Map(
    baseline.findings.map((entry) => {
      const id = identity(entry);
      return [id, { ...entry, count: (unasked(entry) ? known.get(id) : met.get(id)) ?? 0 }];
    }),
  );
  const sum = (counts: Iterable<number>): number => [...counts].reduce((total, one) => total + one, 0);
  const baselined = sum(met.values());
  const staying = sum([...remaining.values()].map(({ count }) => count));
  return {
    result: { ...result, findings, summary: { ...result.summary, ...findingCounts(findings), baselined } },
    stale: sum(known.values()) - staying,
    remaining: {
      ...baseline,
      findings: sorted([...remaining.values()].filter(({ count }) => count > 0)),
    },
  };
}

/** Whether two baselines were written over the same paths. */
export const samePaths = (baseline: Baseline, paths: readonly string[], key: FileKey): boolean =>
  JSON.stringify([...baseline.paths].sort()) === JSON.stringify([...new Set(paths.map(key))].sort());

const locked = new Set(rules.filter((rule) => rule.locked).map((rule) => rule.id));
const canBeKnown = ({ rule }: Finding): boolean => !locked.has(rule);

const identity = ({ file, rule, path }: Omit<BaselineEntry, "count">): string =>
  JSON.stringify([file, rule, path]);

const sorted = (entries: readonly BaselineEntry[]): BaselineEntry[] =>
  entries
    .map((entry) => ({ entry, id: [entry.file, entry.rule, entry.path].join("\u0000") }))
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map(({ entry }) => entry);
