/**
 * Omission mutants: take any one required thing out of a complete case, and the linter must name it. `npm test` leaves each
 * out in one of the ways, by turns, `npm run test:long` in all.
 */
import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { isWhole } from "../random.ts";
import { lintInCopy, news } from "./in-copy.ts";
import { mutate, names, ways } from "./mutate.ts";
import { omissionsOf } from "./omissions.ts";

const complete = readCases(["cases-example/alder-farm", "tests/fixtures/birch-farm"]);

describe("complete cases", () => {
  it("are there", () => {
    expect(complete.unreadable).toEqual([]);
    expect(complete.cases.length).toBeGreaterThanOrEqual(27);
  });

  it("give no finding at all", () => {
    expect(lintCases(complete).findings).toEqual([]);
  });
});

describe("omission mutants", () => {
  const caught = new Map<string, { caught: number; total: number }>();

  it.each(complete.cases.map((one) => [one.file, one] as const))("of %s are all found", (file, one) => {
    const record: unknown = parse(readFileSync(file, "utf8"));
    const mutants = omissionsOf(one).flatMap((omission, index) =>
      ways
        .filter((way) => omission.onlyBlank !== true || way === "key left blank")
        .filter((_, at, { length }) => isWhole || at === index % length)
        .map((way) => ({ omission, way, text: mutate(record, omission, way) })),
    );
    // All mutants lie side by side, so that farm and visit are read once.
    const { of } = lintInCopy(
      file,
      Object.fromEntries(mutants.map(({ text }, index) => [`mutant-${index}.yaml`, text])),
    );
    const before = of(basename(file));
    const missed: string[] = [];
    for (const [index, { omission, way }] of mutants.entries()) {
      const found = names(news(of(`mutant-${index}.yaml`), before), omission);
      const score = caught.get(omission.what) ?? { caught: 0, total: 0 };
      caught.set(omission.what, { caught: score.caught + (found ? 1 : 0), total: score.total + 1 });
      if (!found) missed.push(`${omission.paths.map((path) => path.join(".")).join(" + ")} (${way})`);
    }
    expect(missed).toEqual([]);
  });

  it("are counted", () => {
    const rows = [...caught].map(([what, { caught: found, total }]) => `${what} ${found}/${total}`);
    const sum = [...caught.values()].reduce(
      (a, b) => ({ caught: a.caught + b.caught, total: a.total + b.total }),
      { caught: 0, total: 0 },
    );
    console.log(`omission mutants found: ${sum.caught} of ${sum.total} (${rows.join(", ")})`);
    expect(sum.total).toBeGreaterThan(isWhole ? 2900 : 1400);
    expect(sum.caught).toBe(sum.total);
  });
});
