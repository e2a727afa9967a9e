/** The published outbreaks of the half that patterns are set by: those that must alarm do, everyday disease does not. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { findAlarms } from "../../src/alarms/index.ts";
import { readCases } from "../../src/cases/index.ts";

const root = fileURLToPath(new URL("../fixtures/outbreaks/", import.meta.url));

interface Source {
  readonly half: "work" | "untouched";
  readonly expected: { readonly alarm: "yes" | "no" };
}

const outbreaks = readdirSync(root)
  .filter((name) => existsSync(join(root, name, "source.yaml")))
  .map((name) => {
    const folder = join(root, name);
    const source = parse(readFileSync(join(folder, "source.yaml"), "utf8")) as Source;
    const files = readdirSync(folder).filter((file) => /^(?:pig-.*|visit)\.yaml$/.test(file));
    const { cases, visits } = readCases(files.map((file) => join(folder, file)));
    const alone = cases.filter((one) => one.visit === undefined);
    return { name, ...source, alarmed: [...visits, ...alone].some((one) => findAlarms(one).length > 0) };
  });

const of = (half: Source["half"], alarm: "yes" | "no") =>
  outbreaks.filter((one) => one.half === half && one.expected.alarm === alarm);

describe("published outbreaks", () => {
  it("that patterns may be set by alarm where they must, and only there", () => {
    // It tells of lesions of the coronary bands and not of what kind: only the look for signs can hold that.
    const silent = ["svd-portugal-2007"];
    expect(of("work", "yes").flatMap(({ name, alarmed }) => (alarmed ? [] : [name]))).toEqual(silent);
    expect(of("work", "no").flatMap(({ name, alarmed }) => (alarmed ? [name] : []))).toEqual([]);
  });

  it("that nobody looked at are counted", () => {
    const count = (alarm: "yes" | "no"): string => {
      const all = of("untouched", alarm);
      return `${all.filter(({ alarmed }) => alarmed).length} of ${all.length}`;
    };
    console.log(`untouched outbreaks: ${count("yes")} that must alarm do, ${count("no")} of the others do`);
    expect(of("untouched", "yes").length).toBeGreaterThan(30);
  });
});
