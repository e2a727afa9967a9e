/** Omission mutants: take any one required thing out of a complete case, and the linter must name it. */
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Document, parseDocument } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { defaultSettings } from "../../src/cases/settings.ts";
import { type AgeClass, ageClasses } from "../../src/knowledge/index.ts";
import { type Finding, lintCases } from "../../src/lint/index.ts";
import { completeCase } from "./complete-case.ts";
import { type Omission, omissionsOf } from "./omissions.ts";

const complete = readCases([
  "cases-example/alder-farm",
  "tests/fixtures/birch-farm",
  "tests/fixtures/protocols",
]);
const ways = ["key taken out", "key left blank"] as const;

function mutate(document: Document, omission: Omission, way: (typeof ways)[number]): string {
  const copy = document.clone();
  for (const path of omission.paths)
    if (way === "key taken out") copy.deleteIn(path);
    else copy.setIn(path, null);
  return copy.toString();
}

function lintText(text: string, file: string): readonly Finding[] {
  const name = join(dirname(file), "mutant.yaml");
  return lintCases(readCases(["-"], { input: { bytes: new TextEncoder().encode(text), name } })).findings;
}

/** An error that names what is missing, by its own place or in its words. */
const names = (findings: readonly Finding[], omission: Omission): boolean =>
  findings.some(
    (finding) =>
      finding.level === "error" &&
      omission.names.some((name) => finding.path === name || finding.message.includes(name)),
  );

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
    const document = parseDocument(readFileSync(file, "utf8"));
    const missed: string[] = [];
    for (const omission of omissionsOf(one))
      for (const way of ways) {
        const found = names(lintText(mutate(document, omission, way), file), omission);
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
    expect(sum.total).toBeGreaterThan(1000);
    expect(sum.caught).toBe(sum.total);
  });
});

describe("omission mutants of every protocol and age class", () => {
  const wishes = [...defaultSettings.protocols.values()].flatMap((protocol) =>
    (Object.keys(ageClasses.classes) as AgeClass[]).map((ageClass) => ({
      protocol,
      ageClass,
      sex: "female" as const,
      signs: protocol.id === "neurological" ? ["convulsions", "lameness"] : ["none"],
    })),
  );
  let caught = 0;
  let total = 0;

  it.each(wishes.map((wish) => [wish.protocol.id, wish.ageClass, wish] as const))(
    "%s, %s",
    (_protocol, _class, wish) => {
      const text = completeCase(wish);
      expect(lintText(text, "made/made-1.yaml")).toEqual([]);
      const one = readCases(["-"], {
        input: { bytes: new TextEncoder().encode(text), name: "made/made-1.yaml" },
      }).cases[0];
      expect(one).toBeDefined();
      const missed: string[] = [];
      for (const omission of one === undefined ? [] : omissionsOf(one)) {
        total++;
        if (
          names(
            lintText(mutate(parseDocument(text), omission, "key taken out"), "made/made-1.yaml"),
            omission,
          )
        )
          caught++;
        else missed.push(omission.names[0] ?? "");
      }
      expect(missed).toEqual([]);
    },
  );

  it("are counted", () => {
    console.log(`omission mutants of all protocols and age classes found: ${caught} of ${total}`);
    expect(total).toBeGreaterThan(1000);
    expect(caught).toBe(total);
  });
});
