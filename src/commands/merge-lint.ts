/** The results of `carcase lint --shard` as the result of one run. */
import { existsSync } from "node:fs";
import { fileFault } from "../cases/faults/fault.ts";
import { allFaults, type ReadOptions } from "../cases/index.ts";
import type { LintReport } from "../formats/lint/report.ts";
import { unreadableRule } from "../formats/lint/report.ts";
import {
  type Finding,
  type LintedParts,
  type LintOptions,
  type LintResult,
  lintResult,
} from "../lint/index.ts";
import type { Asked, LintCommandOptions } from "./lint-asked.ts";
import { type LintedFolders, withDuplicates } from "./lint-folders.ts";
import type { Run } from "./run.ts";
import type { Part, Parts, ShardMark } from "./shard.ts";
import { UsageError } from "./usage-error.ts";

interface LintFacts {
  /** How many of the files that could not be read stand around cases: those come first. */
  readonly around: number;
  /** Errors of the format that were found and not shown: of scales each by itself, for all parts have them. */
  readonly notShown: number;
  readonly scales: readonly (readonly [file: string, notShown: number])[];
  readonly ids: readonly (readonly [id: string, files: readonly string[]])[];
}

interface LintAsked {
  readonly paths: readonly string[];
  readonly config?: string | false;
  readonly rules: LintOptions;
  readonly failing: Asked["failing"];
}

type ShownFinding = Omit<Finding, "length" | "excerpt">;

/** As it stands in JSON. */
interface LintJson extends Pick<LintResult, "completeness" | "visits"> {
  readonly findings: readonly ShownFinding[];
  readonly accepted: readonly (Pick<Finding, "rule" | "file" | "line" | "path"> & {
    readonly because: string;
  })[];
  readonly passed_over: readonly string[];
}

type LintPart = Part<LintJson, LintAsked, LintFacts>;

export function lintMark(
  linted: LintedFolders,
  asked: Asked,
  { paths, options }: Run<LintCommandOptions>,
): ShardMark<LintAsked, LintFacts> {
  const { shard = { number: 1, of: 1 }, rules, failing } = asked;
  const scales = new Map(linted.scales.flatMap(({ files }) => files));
  const others = new Map(linted.parts.flatMap(({ files }) => files).filter(([file]) => !scales.has(file)));
  const ids = new Map<string, string[]>();
  for (const [id, files] of linted.parts.flatMap((part) => part.ids))
    ids.set(id, [...(ids.get(id) ?? []), ...files].sort());
  const question: LintAsked = {
    paths: paths.toSorted(),
    ...(options.config !== undefined && { config: options.config }),
    rules,
    failing,
  };
  return {
    command: "lint",
    ...shard,
    asked: question,
    facts: {
      around: linted.around,
      notShown: [...others.values()].reduce((sum, { formatErrorsNotShown }) => sum + formatErrorsNotShown, 0),
      scales: [...scales].map(([file, { formatErrorsNotShown }]) => [file, formatErrorsNotShown]),
      ids: [...ids],
    },
  };
}

/** @throws UsageError where a case id stands in two parts and the files are not there */
export function mergedLint(
  parts: Parts<LintPart>,
): Pick<LintReport, "result" | "unreadable" | "passedOver" | "failing"> {
  const { paths, config, rules, failing } = parts[0].mark.asked;
  const faults = parts.map(({ result, mark }) => {
    const all = result.findings
      .filter(({ rule }) => rule === unreadableRule)
      .map(({ file, message, line, column }) => ({ ...fileFault(file, message), line, column }));
    return { around: all.slice(0, mark.facts.around), asked: all.slice(mark.facts.around) };
  });
  const unreadable = allFaults(faults);
  const linted = parts.flatMap(lintedParts);
  checkThere(parts);
  const read: ReadOptions = config === undefined ? {} : { config };
  const together = withDuplicates({ parts: linted }, { paths, read, rules });
  return {
    result: lintResult(together.parts, unreadable),
    unreadable,
    passedOver: parts.flatMap(({ result }) => result.passed_over).sort(),
    failing,
  };
}

/** What a part found of its farms, and what each part finds of scales. */
function lintedParts({ result, mark }: LintPart): LintedParts[] {
  const { ids, notShown, scales } = mark.facts;
  const isOfScale = ({ file }: ShownFinding): boolean => scales.some(([scale]) => scale === file);
  const findings = result.findings
    .filter(({ rule }) => rule !== unreadableRule)
    .map((one) => ({ ...one, length: 0, excerpt: "" }));
  const nothing = { accepted: [], completeness: [], visits: [], settings: [], ids: [] };
  const about = { rules: {}, unsound: false };
  return [
    {
      ...nothing,
      findings: findings.filter((one) => !isOfScale(one)),
      // Their places in the line are not in the result; their order tells as much.
      accepted: result.accepted.map((one, column) => ({
        ...one,
        level: "error",
        message: "",
        column,
        length: 0,
        excerpt: "",
      })),
      completeness: result.completeness,
      visits: result.visits,
      ids,
      files: [[`part ${mark.number}`, { ...about, formatErrorsNotShown: notShown, shared: false }]],
    },
    {
      ...nothing,
      findings: findings.filter(isOfScale),
      files: scales.map(([file, ofScale]) => [
        file,
        { ...about, formatErrorsNotShown: ofScale, shared: true },
      ]),
    },
  ];
}

/** Which of two cases of one id is the copy is looked up in the files. */
function checkThere(parts: readonly LintPart[]): void {
  const seen = new Map<string, string>();
  for (const { mark } of parts)
    for (const [id, [first = "", ...others]] of mark.facts.ids) {
      const other = seen.get(id);
      const lost = [first, ...others, other ?? first].find((file) => !existsSync(file));
      if (other !== undefined && lost !== undefined)
        throw new UsageError(
          `case: "${id}" is the case of ${other} and of ${first}, in two parts; which is the copy stands in the files, and ${lost} is not here. Run carcase merge where carcase lint was run.`,
        );
      seen.set(id, first);
    }
}
