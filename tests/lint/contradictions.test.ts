/**
 * Contradiction mutants: put any one slip into a complete case, and the linter must name it. `npm test` puts each into the
 * first case that it can be put into and every fourth one after it, `npm run test:long` into all.
 */
import { readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { readCases, type Visit } from "../../src/cases/index.ts";
import { type Finding, rules } from "../../src/lint/index.ts";
import { isWhole } from "../random.ts";
import { contradictions, visitContradictions } from "./contradictions.ts";
import { lintInCopy, news } from "./in-copy.ts";
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

  const applied = new Map<string, number>();
  const isTried = (kind: string): boolean => {
    const before = applied.get(kind) ?? 0;
    applied.set(kind, before + 1);
    return isWhole || before % 4 === 0;
  };

  it.each(complete.cases.map((one) => [one.file, one] as const))("of %s are all found", (file, one) => {
    const slips = contradictions.flatMap((slip) => {
      const over = slip.over(one);
      return over === undefined || !isTried(slip.kind) ? [] : [{ slip, over }];
    });
    // All mutants lie side by side, so that farm and visit are read once.
    const record = readYaml(file);
    const { of } = lintInCopy(
      file,
      Object.fromEntries(
        slips.map(({ over }, index) => [
          `mutant-${index}.yaml`,
          JSON.stringify(lay(record, parse(over)), null, 1),
        ]),
      ),
    );
    const before = of(basename(file));
    const missed = slips.filter(({ slip }, index) => {
      const caught = news(of(`mutant-${index}.yaml`), before).some(
        ({ rule, path }) => slip.rules.includes(rule) && path.startsWith(slip.at),
      );
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
        if (over === undefined || !isTried(slip.kind)) return false;
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
    expect(sum("total")).toBeGreaterThan(isWhole ? 2500 : 650);
    expect(sum("caught")).toBe(sum("total"));
  });
});

/** Lints a visit with something laid over it and over its first case. */
function lintVisit(
  visit: Visit,
  over: { readonly visit?: string; readonly first?: string },
): readonly Finding[] {
  const day = dirname(visit.file);
  const first = visit.cases[0] === undefined ? undefined : basename(visit.cases[0].file);
  const laid = ([name, text]: readonly [string | undefined, string | undefined]): [string, string][] =>
    name === undefined || text === undefined
      ? []
      : [[name, stringify(lay(readYaml(join(day, name)), parse(text)))]];
  const changed = [["visit.yaml", over.visit] as const, [first, over.first] as const].flatMap(laid);
  return lintInCopy(visit.file, Object.fromEntries(changed)).all;
}
