/** The published outbreaks as the work-up ranks them, beside the diagnosis of the report. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse, stringify } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import type { Subject } from "../../src/patterns/index.ts";
import { type Workup, workUp } from "../../src/workup/index.ts";
import { folderInTurns } from "../cases/temporary.ts";

const fixtures = fileURLToPath(new URL("../fixtures/", import.meta.url));

export const halves = ["work", "counted"] as const;
export type Half = (typeof halves)[number];

export const accepted = parse(readFileSync(join(fixtures, "workup/cases.yaml"), "utf8")) as Readonly<
  Record<Half, Readonly<Record<string, readonly string[]>>>
> & { readonly left_out: Readonly<Record<string, readonly string[]>> };

export interface Ranked {
  readonly name: string;
  readonly diagnosis: readonly string[];
  readonly subject: Subject;
  readonly workup: Workup;
  /** The place of the first disease that is the report's diagnosis, from 1; undefined where none is listed. */
  readonly place: number | undefined;
}

const inTurns = folderInTurns();

/** An outbreak as a visit; one pig without a visit is a case. */
function subjectOf(name: string): Subject {
  const folder = join(fixtures, "outbreaks", name);
  const files = readdirSync(folder).filter((file) => /^(?:pig-.*|visit)\.yaml$/.test(file));
  const paths = files.map((file) => join(folder, file));
  const { visits, cases } = readCases(
    existsSync(join(folder, "visit.yaml")) || files.length === 1 ? paths : [withVisit(paths)],
  );
  const subject = visits[0] ?? cases[0];
  if (subject === undefined) throw new Error(`${name}: no case`);
  return subject;
}

/** Pigs that a report describes without its herd, as pigs of one visit. */
function withVisit(paths: readonly string[]): string {
  const files = Object.fromEntries(paths.map((path) => [basename(path), readFileSync(path, "utf8")]));
  return inTurns({ ...files, "visit.yaml": stringify({ format: 1, visit: "hazel", date: "2026-04-20" }) });
}

export const rankedOf = (half: Half): Ranked[] =>
  Object.entries(accepted[half]).map(([name, diagnosis]) => {
    const subject = subjectOf(name);
    const workup = workUp(subject);
    const index = workup.fits.findIndex(({ disease }) => diagnosis.includes(disease.id));
    return { name, diagnosis, subject, workup, place: index < 0 ? undefined : index + 1 };
  });

/** How many of a half have the report's diagnosis among so many first. */
export const within = (ranked: readonly Ranked[], most: number): number =>
  ranked.filter(({ place }) => place !== undefined && place <= most).length;
