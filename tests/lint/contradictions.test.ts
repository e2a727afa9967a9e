/** Contradiction mutants: put any one slip into a complete case, and the linter must name it. */
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { readCases, type Visit } from "../../src/cases/index.ts";
import { type Finding, lintCases, rules } from "../../src/lint/index.ts";
import { type Contradiction, contradictions, visitContradictions } from "./contradictions.ts";
import { lay } from "./lay-example.ts";

const complete = readCases(["cases-example/alder-farm", "tests/fixtures/birch-farm"]);
const readYaml = (file: string): unknown => parse(readFileSync(file, "utf8"));

describe("contradictions", () => {
  const every = [...contradictions, ...visitContradictions];

  it("are of many kinds, each known once", () => {
    expect(new Set(every.map(({ kind }) => kind)).size).toBe(every.length);
    expect(every.length).toBeGreaterThanOrEqual(60);
  });

  it("name rules that exist", () => {
    const ids = new Set(rules.map(({ id }) => id));
    expect(every.flatMap((one) => one.rules).filter((id) => !ids.has(id))).toEqual([]);
  });
});

describe("contradiction mutants", () => {
  const score = new Map<string, { caught: number; total: number }>();
  const count = (kind: string, caught: boolean): void => {
    const before = score.get(kind) ?? { caught: 0, total: 0 };
    score.set(kind, { caught: before.caught + (caught ? 1 : 0), total: before.total + 1 });
  };

  it.each(complete.cases.map((one) => [one.file, one] as const))("of %s are all found", (file, one) => {
    const slips = contradictions.flatMap((slip) => {
      const over = slip.over(one);
      return over === undefined ? [] : [{ slip, over }];
    });
    // All mutants lie side by side, so that farm and visit are read once.
    const findings = inCopy(file, (day) => {
      const record = readYaml(file);
      for (const [index, { over }] of slips.entries())
        writeFileSync(join(day, `mutant-${index}.yaml`), JSON.stringify(lay(record, parse(over)), null, 1));
      writeFileSync(join(day, "unchanged.yaml"), JSON.stringify(record, null, 1));
    });
    const inFile = (name: string): readonly Finding[] =>
      findings.filter((finding) => basename(finding.file) === name);
    const before = inFile("unchanged.yaml");
    const missed = slips.filter(({ slip }, index) => {
      const caught = isNamed(inFile(`mutant-${index}.yaml`), slip, before);
      count(slip.kind, caught);
      return !caught;
    });
    expect(missed.map(({ slip }) => `${slip.kind} (${slip.rules.join(", ")})`)).toEqual([]);
  });

  it.each(complete.visits.map((visit) => [visit.id, visit] as const))(
    "of the visit %s are all found",
    (_id, visit) => {
      const missed = visitContradictions.filter((slip) => {
        const over = slip.over(visit);
        if (over === undefined) return false;
        const caught = lintVisit(visit, over).some(({ rule }) => slip.rules.includes(rule));
        count(slip.kind, caught);
        return !caught;
      });
      expect(missed.map(({ kind }) => kind)).toEqual([]);
    },
  );

  it("are counted", () => {
    const rows = [...score].map(([kind, { caught, total }]) => `  ${caught} of ${total}: ${kind}`);
    const sum = (of: "caught" | "total"): number =>
      [...score.values()].reduce((all, one) => all + one[of], 0);
    console.log(
      `contradiction mutants found: ${sum("caught")} of ${sum("total")}, ${score.size} kinds\n${rows.join("\n")}`,
    );
    expect(score.size).toBe(contradictions.length + visitContradictions.length);
    expect(sum("total")).toBeGreaterThan(2500);
    expect(sum("caught")).toBe(sum("total"));
  });
});

/** Whether a finding of the right rule at the right place is there that the case did not have before. */
function isNamed(findings: readonly Finding[], slip: Contradiction, before: readonly Finding[]): boolean {
  return findings.some(
    ({ rule, path }) =>
      slip.rules.includes(rule) &&
      path.startsWith(slip.at) &&
      !before.some((finding) => finding.rule === rule && finding.path === path),
  );
}

/** Lints one day of a copy of the farm, with its settings, after something was changed there. */
function inCopy(file: string, change: (day: string) => void): readonly Finding[] {
  const folder = mkdtempSync(join(tmpdir(), "carcase-contradiction-"));
  try {
    const farm = dirname(dirname(file));
    const settings = join(dirname(farm), "carcase.yaml");
    cpSync(farm, folder, { recursive: true });
    if (existsSync(settings)) cpSync(settings, join(folder, "carcase.yaml"));
    const day = join(folder, basename(dirname(file)));
    change(day);
    return lintCases(readCases([day])).findings;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Lints a visit with something laid over it and over its first case. */
function lintVisit(
  visit: Visit,
  over: { readonly visit?: string; readonly first?: string },
): readonly Finding[] {
  return inCopy(visit.file, (day) => {
    const lays: readonly (readonly [string | undefined, string | undefined])[] = [
      ["visit.yaml", over.visit],
      [visit.cases[0] === undefined ? undefined : basename(visit.cases[0].file), over.first],
    ];
    for (const [name, text] of lays)
      if (name !== undefined && text !== undefined)
        writeFileSync(join(day, name), stringify(lay(readYaml(join(day, name)), parse(text))));
  });
}
