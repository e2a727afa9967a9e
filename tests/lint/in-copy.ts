/** Lints changed records in the place of the ones they came from: in a copy of their farm, with its settings. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { openAlarmsOf } from "../../src/alarms/index.ts";
import { type Archive, type Case, readCases } from "../../src/cases/index.ts";
import { type Finding, lintCases } from "../../src/lint/index.ts";
import { folderInTurns } from "../cases/temporary.ts";

type Files = Readonly<Record<string, string>>;

const inTurns = folderInTurns();
const farms = new Map<string, Files>();

/** The files of a farm and the settings above it, read once. */
function farmOf(folder: string): Files {
  const before = farms.get(folder);
  if (before !== undefined) return before;
  const read = (name: string): [string, string] => [name, readFileSync(join(folder, name), "utf8")];
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" });
  const settings = join(dirname(folder), "carcase.yaml");
  const files = {
    ...(existsSync(settings) ? { "carcase.yaml": readFileSync(settings, "utf8") } : {}),
    ...Object.fromEntries(names.filter((name) => /\.\w+$/.test(name)).map(read)),
  };
  farms.set(folder, files);
  return files;
}

/**
 * Lints the day of a file with other files beside it or in the place of its own, so that settings, farm and visit are
 * read once for all of them: all findings, and those of a file of that day.
 */
export function lintInCopy(
  file: string,
  changed: Files,
): { readonly all: readonly Finding[]; of(name: string): readonly Finding[] } {
  const day = basename(dirname(file));
  const folder = inTurns({
    ...farmOf(dirname(dirname(file))),
    ...Object.fromEntries(Object.entries(changed).map(([name, text]) => [`${day}/${name}`, text])),
  });
  const together = readCases([join(folder, day)]);
  // A stop in one pig silences what asks for more in the others of its visit, so those that alarm are linted by themselves.
  const alarming = new Set(openAlarmsOf(together).map((alarm) => basename(alarm.file)));
  const isChanged = ({ file: one }: Case): boolean => Object.hasOwn(changed, basename(one));
  const part = (alarms: boolean): Archive => {
    const isOfPart = (one: Case): boolean => !isChanged(one) || alarming.has(basename(one.file)) === alarms;
    const visits = together.visits.map((visit) => ({ ...visit, cases: visit.cases.filter(isOfPart) }));
    return { ...together, visits, cases: together.cases.filter(isOfPart) };
  };
  const parts = together.cases.some((one) => isChanged(one) && alarming.has(basename(one.file)))
    ? [part(false), part(true)]
    : [together];
  const findings = parts.flatMap((archive) => lintCases(archive).findings);
  const byName = new Map<string, Finding[]>();
  for (const finding of findings) {
    const name = basename(finding.file);
    byName.set(name, [...(byName.get(name) ?? []), finding]);
  }
  return { all: findings, of: (name) => byName.get(name) ?? [] };
}

/** The findings that were not there, at the same place, before the change. */
export const news = (findings: readonly Finding[], before: readonly Finding[]): readonly Finding[] => {
  const known = new Set(before.map(({ rule, path }) => `${rule} ${path}`));
  return findings.filter(({ rule, path }) => !known.has(`${rule} ${path}`));
};
