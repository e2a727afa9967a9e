/** The published outbreaks with what the alarms say of them, for the tests and the table in docs/alarms.md. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
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

export const outbreaksOf = (half: Source["half"], alarm: "yes" | "no") =>
  outbreaks.filter((one) => one.half === half && one.expected.alarm === alarm);

/** `23 of 24` */
export function raised(half: Source["half"], alarm: "yes" | "no"): string {
  const all = outbreaksOf(half, alarm);
  return `${all.filter(({ alarmed }) => alarmed).length} of ${all.length}`;
}
