/** What must hold of every work-up: without its key finding a disease moves down, and what excludes it takes it out. */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { type Path, readCases, valueAt } from "../../src/cases/index.ts";
import { type Disease, diseases, type Statement } from "../../src/knowledge/diseases.ts";
import type { Subject } from "../../src/patterns/index.ts";
import { countOf, type Fit, fitOf, hasCore, isExcluded, workUp } from "../../src/workup/index.ts";
import { readAlarmFiles } from "../alarms/alarm-archive.ts";
import { folderInTurns } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { rankedOf } from "./ranked.ts";

const inTurns = folderInTurns();

/** The places of what is typical of a disease or its hallmark, by file. */
function corePlaces({ favour }: Fit): Map<string, Path[]> {
  const places = new Map<string, Path[]>();
  for (const { strength, evidence } of favour)
    if (strength !== "supports")
      for (const { subject, path } of evidence)
        if (typeof path.at(-1) === "number")
          places.set(subject.file, [...(places.get(subject.file) ?? []), path]);
  return places;
}

/** The same files without these entries of lists. */
function without(files: readonly string[], places: ReadonlyMap<string, readonly Path[]>): Subject {
  const texts = files.map((file): [string, string] => {
    const record: unknown = parse(readFileSync(file, "utf8"));
    for (const path of places.get(file) ?? []) {
      const list = valueAt(record, path.slice(0, -1));
      if (Array.isArray(list)) list[Number(path.at(-1))] = undefined;
    }
    return [basename(file), stringify(compact(record))];
  });
  const { visits, cases } = readCases([inTurns(Object.fromEntries(texts))]);
  const subject = visits[0] ?? cases[0];
  if (subject === undefined) throw new Error("no case");
  return subject;
}

/** Without the entries that were taken out. */
function compact(value: unknown): unknown {
  if (Array.isArray(value)) return value.filter((one) => one !== undefined).map(compact);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .map(([key, one]): [string, unknown] => [key, compact(one)])
      .filter(([, one]) => !Array.isArray(one) || one.length > 0),
  );
}

const first = rankedOf("seen").filter(({ workup: { fits } }) => fits[0] !== undefined && hasCore(fits[0]));
const folderOf = (name: string): string => join("tests/fixtures/outbreaks", name);

every(
  "without its key findings the first disease counts less",
  first.filter((_, index) => index % 3 === 0),
  ({ name, subject, workup: { fits } }) => {
    const [best] = fits;
    if (best === undefined) return;
    const places = new Map(
      [...corePlaces(best)].map(([file, paths]) => [join(folderOf(name), basename(file)), paths]),
    );
    const files = readdirSync(folderOf(name)).filter((file) => /^(?:pig-.*|visit)\.yaml$/.test(file));
    const rest = workUp(
      without(
        files.map((file) => join(folderOf(name), file)),
        places,
      ),
    );
    const after = rest.fits.find(({ disease }) => disease === best.disease);
    expect([...places.values()].flat().length, subject.id).toBeGreaterThan(0);
    expect(after === undefined ? Number.NEGATIVE_INFINITY : countOf(after)).toBeLessThan(countOf(best));
  },
  ({ name }) => name,
);

const plain = { pig: { age: "60 d" } };
const red = { respiratory: { lungs: [{ process: "consolidation" }] } };
const source = (confidence: "verified" | "from-memory") => ({ cite: "invented for this test", confidence });

/** A disease made up for a test. */
const invented = (statements: readonly Statement[]): Disease => {
  const [known] = [...diseases.values()];
  if (known === undefined) throw new Error("no disease");
  const [one, two, three, ...more] = statements;
  if (one === undefined || two === undefined || three === undefined) throw new Error("too few");
  return { ...known, id: "invented", alarms: [], statements: [one, two, three, ...more] };
};

const seen = (organ: string, process: string): NonNullable<Statement["when"]> => ({
  finding: { organs: [organ], process: [process] },
});

function subjectWith(one: object): Subject {
  const [visit] = readAlarmFiles({ cases: [one] }).visits;
  if (visit === undefined) throw new Error("no visit");
  return visit;
}

describe("an exclusion", () => {
  const of = (confidence: "verified" | "from-memory"): Disease =>
    invented([
      {
        says: "firm",
        strength: "typical",
        when: seen("respiratory.lungs", "consolidation"),
        source: source("verified"),
      },
      { says: "cough", strength: "supports", when: { signs: ["cough"] }, source: source("verified") },
      {
        says: "milk spots",
        strength: "excludes",
        when: seen("liver_pancreas.liver", "milk-spots"),
        source: source(confidence),
      },
    ]);
  const with_ = subjectWith({ ...plain, ...red, liver_pancreas: { liver: [{ process: "milk-spots" }] } });
  const without_ = subjectWith({ ...plain, ...red });

  it("that was read in its source takes the disease out", () => {
    expect(isExcluded(fitOf(of("verified"), with_))).toBe(true);
    expect(isExcluded(fitOf(of("verified"), without_))).toBe(false);
  });

  it("from memory lowers, and never removes", () => {
    const fit = fitOf(of("from-memory"), with_);
    expect(isExcluded(fit)).toBe(false);
    expect(countOf(fit)).toBeLessThan(countOf(fitOf(of("from-memory"), without_)));
  });

  it("takes a known disease out of the list", () => {
    const day = (age: string) =>
      workUp(
        subjectWith({
          pig: { age },
          selection: { signs: ["diarrhoea"] },
          intestine: { jejunum: [{ process: "fibrin" }, { process: "necrosis" }] },
        }),
      );
    const ids = ({ fits }: { fits: readonly Fit[] }) => fits.map(({ disease }) => disease.id);
    expect(ids(day("9 d"))).toContain("piglet-coccidiosis");
    expect(ids(day("2 d"))).not.toContain("piglet-coccidiosis");
    expect(day("2 d").excluded.map(({ disease }) => disease.id)).toContain("piglet-coccidiosis");
  });
});

describe("what is not there", () => {
  const absent = invented([
    {
      says: "firm",
      strength: "typical",
      when: seen("respiratory.lungs", "consolidation"),
      source: source("verified"),
    },
    {
      says: "clean brain",
      strength: "supports",
      when: { none: [{ finding: { organs: ["nervous.brain"], process: ["inflammation"] } }] },
      source: source("verified"),
    },
    {
      says: "spots",
      strength: "typical",
      when: seen("liver_pancreas.liver", "milk-spots"),
      source: source("verified"),
    },
  ]);

  it("counts only where somebody looked", () => {
    const says = (one: object) =>
      fitOf(absent, subjectWith(one)).favour.map(({ statement }) => statement.says);
    expect(says({ ...plain, ...red })).toEqual(["firm"]);
    expect(says({ ...plain, ...red, nervous: { brain: "normal" } })).toEqual(["firm", "clean brain"]);
  });

  it("is not looked at, or not there", () => {
    const blank = fitOf(absent, subjectWith({ ...plain, ...red }));
    expect(blank.unseen.map(({ statement }) => statement.says)).toEqual(["spots"]);
    const normal = fitOf(absent, subjectWith({ ...plain, ...red, liver_pancreas: { liver: "normal" } }));
    expect(normal.unseen).toEqual([]);
    expect(normal.absent.map(({ says }) => says)).toEqual(["spots"]);
  });
});

it("lists by age and signs alone only where nothing else fits", () => {
  const signs = workUp(subjectWith({ ...plain, selection: { signs: ["cough"] } }));
  expect(signs.fits.length).toBeGreaterThan(0);
  const lesion = workUp(subjectWith({ ...plain, ...red, selection: { signs: ["cough"] } }));
  const told = lesion.fits.filter(
    (fit) => !hasCore(fit) && [...fit.places.keys()].every((key) => / selection/.test(key)),
  );
  expect(told.map(({ disease }) => disease.id)).toEqual([]);
});
