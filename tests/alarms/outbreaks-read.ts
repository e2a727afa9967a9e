/** The published outbreaks with what the alarms say of them, for the tests and the table in docs/alarms.md. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "yaml";
import { findAlarms } from "../../src/alarms/index.ts";
import { readCases } from "../../src/cases/index.ts";

const root = fileURLToPath(new URL("../fixtures/outbreaks/", import.meta.url));

interface Source {
  readonly round: number;
  readonly half: "work" | "untouched";
  readonly expected: { readonly alarm: "yes" | "no" };
  /** Where what is typed meets the criteria otherwise than its typist thought; `by_criteria_because` says by which row. */
  readonly by_criteria?: "yes" | "no";
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

export const outbreaksOf = (half: Source["half"]) => outbreaks.filter((one) => one.half === half);

/** Whether it must alarm: by CRITERIA.md, or as its typist first thought. */
export const mustAlarm = (
  { expected, by_criteria }: Source,
  by: "criteria" | "typist" = "criteria",
): boolean => (by === "criteria" ? (by_criteria ?? expected.alarm) : expected.alarm) === "yes";

export const rounds: readonly number[] = [...new Set(outbreaks.map(({ round }) => round))].sort(
  (a, b) => a - b,
);

/** `23 of 24` */
export function raised(round: number, must: boolean, by?: "criteria" | "typist"): string {
  const all = outbreaks.filter((one) => one.round === round && mustAlarm(one, by) === must);
  return `${all.filter(({ alarmed }) => alarmed).length} of ${all.length}`;
}
