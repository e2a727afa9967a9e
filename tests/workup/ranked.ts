/** The published outbreaks as the work-up ranks them, beside the diagnosis of the report. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse, stringify } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { publishedOutbreaks } from "../../src/knowledge/diseases.ts";
import type { Subject } from "../../src/patterns/index.ts";
import { tallied, type Workup, workUp } from "../../src/workup/index.ts";
import { folderInTurns } from "../cases/temporary.ts";

const fixtures = fileURLToPath(new URL("../fixtures/", import.meta.url));

type Diagnoses = Readonly<Record<string, readonly string[]>>;

/** Outbreaks with their diagnoses: those that were worked with, and those that are only counted where there are any. */
interface Accepted {
  readonly seen: Diagnoses;
  readonly counted?: Diagnoses;
  readonly left_out: Diagnoses;
}

const read = (file: string): Accepted => parse(readFileSync(file, "utf8")) as Accepted;

/** `CARCASE_WORKUP_CASES=FILE` counts the outbreaks that stand under `counted` in a file of the same form. */
const { CARCASE_WORKUP_CASES: other } = process.env;

/** The page shows the outbreaks of the repository. */
export const isOfPage = other === undefined;

const known = read(join(fixtures, "workup/cases.yaml"));
export const accepted: Accepted =
  other === undefined ? known : { ...known, counted: read(other).counted ?? {} };

export const setNames = ["seen", "counted"] as const;
export type SetName = (typeof setNames)[number];

export interface Ranked {
  readonly name: string;
  readonly diagnosis: readonly string[];
  readonly subject: Subject;
  readonly workup: Workup;
  /** The place of the first line with the report's diagnosis, from 1; undefined where none is listed. */
  readonly place: number | undefined;
}

const inTurns = folderInTurns();

/** An outbreak as a visit; one pig without a visit is a case. */
export function subjectOf(name: string): Subject {
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
const withVisit = (paths: readonly string[]): string =>
  inTurns(ofOneVisit(Object.fromEntries(paths.map((path) => [basename(path), readFileSync(path, "utf8")]))));

/** Several pigs belong to a visit, whether or not it is told. */
export const ofOneVisit = (files: Readonly<Record<string, string>>): Record<string, string> => ({
  ...(Object.keys(files).length > 1 && {
    "visit.yaml": stringify({ format: 1, visit: "hazel", date: "2026-04-20" }),
  }),
  ...files,
});

export const rankedOf = (set: SetName): Ranked[] =>
  Object.entries(accepted[set] ?? {}).map(([name, diagnosis]) => {
    const subject = subjectOf(name);
    const others = publishedOutbreaks.filter(({ outbreak }) => outbreak !== name);
    const workup = workUp(subject, tallied(others));
    const index = workup.fits.findIndex((fit) =>
      [fit, ...fit.otherForms].some(({ disease }) => diagnosis.includes(disease.id)),
    );
    return { name, diagnosis, subject, workup, place: index < 0 ? undefined : index + 1 };
  });

/** How many have the report's diagnosis among so many first. */
export const within = (ranked: readonly Ranked[], most: number): number =>
  ranked.filter(({ place }) => place !== undefined && place <= most).length;
