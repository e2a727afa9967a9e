/** What must hold of every work-up: without its key finding a disease moves down, and what excludes it takes it out. */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { formatPath, type Path, readCases, valueAt } from "../../src/cases/index.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { workupText } from "../../src/formats/workup/document.ts";
import { type Disease, diseases, type Statement } from "../../src/knowledge/diseases.ts";
import type { Subject } from "../../src/patterns/index.ts";
import { countOf, countsOf, type Fit, fitOf, hasCore, isExcluded, workUp } from "../../src/workup/index.ts";
import { readAlarmFiles } from "../alarms/alarm-archive.ts";
import { folderInTurns } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { lay } from "../lint/lay-example.ts";
import { ofOneVisit, rankedOf } from "./ranked.ts";

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
  const { visits, cases } = readCases([inTurns(ofOneVisit(Object.fromEntries(texts)))]);
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

/** The record of an outbreak without some of its entries. */
function rest(name: string, gone: ReadonlyMap<string, readonly Path[]>) {
  const files = readdirSync(folderOf(name)).filter((file) => /^(?:pig-.*|visit)\.yaml$/.test(file));
  const places = new Map([...gone].map(([file, paths]) => [join(folderOf(name), basename(file)), paths]));
  return workUp(
    without(
      files.map((file) => join(folderOf(name), file)),
      places,
    ),
  );
}

/** Every form of every disease that fits, with the place of its line. */
const placed = ({ fits }: ReturnType<typeof workUp>) =>
  fits.flatMap((fit, place) => [fit, ...fit.otherForms].map((form) => ({ form, place })));

every(
  "without its key findings the first disease counts less, and makes way for one that counts more",
  first.filter((_, index) => index % 6 === 0),
  ({ name, subject, workup: { fits } }) => {
    const [best] = fits;
    if (best === undefined) return;
    const gone = corePlaces(best);
    expect([...gone.values()].flat().length, subject.id).toBeGreaterThan(0);
    const after = rest(name, gone);
    const now = placed(after).find(({ form }) => form.disease === best.disease);
    if (now === undefined) return;
    expect(countOf(now.form)).toBeLessThan(countOf(best));
    const [line, ...later] = after.fits.slice(now.place);
    if (line === undefined) return;
    expect(later.filter((fit) => countOf(fit) > countOf(line)).map(({ disease }) => disease.id)).toEqual([]);
  },
  ({ name }) => name,
);

every(
  "without its key findings the second disease never takes the first place",
  first.filter((_, index) => index % 6 === 1),
  ({ name, workup: { fits } }) => {
    const [best, second] = fits;
    if (best === undefined || second === undefined || !hasCore(second)) return;
    // What the first rests on as well stays.
    const gone = new Map(
      [...corePlaces(second)].map(([file, paths]) => [
        file,
        paths.filter((path) => !best.places.has(`${file} ${formatPath(path)}`)),
      ]),
    );
    if ([...gone.values()].flat().length === 0) return;
    const now = placed(rest(name, gone));
    const placeOf = ({ disease }: Fit) => now.find(({ form }) => form.disease === disease)?.place;
    expect(placeOf(best)).toBeDefined();
    expect(placeOf(second) ?? Number.POSITIVE_INFINITY).toBeGreaterThan(placeOf(best) ?? 0);
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

  const exclusions = [...diseases.values()].flatMap((disease) =>
    disease.statements.flatMap(({ strength, when, source: { confidence }, says }) =>
      strength === "excludes" && confidence === "verified" && when !== undefined
        ? [{ disease, when, says }]
        : [],
    ),
  );

  every(
    "of a known disease takes it out of the list",
    exclusions,
    ({ disease, when }) => {
      const example = disease.examples.find(({ expect: expected }) => expected === "fits");
      const [one = {}] = example?.cases ?? [];
      const ids = (fits: readonly Fit[]) =>
        fits.flatMap((fit) => [fit, ...fit.otherForms].map(({ disease: { id } }) => id));
      expect(ids(workUp(subjectWith(one)).fits)).toContain(disease.id);
      const { fits, excluded } = workUp(subjectWith(Object(lay(one, meeting(when)))));
      expect(ids(fits)).not.toContain(disease.id);
      expect(excluded.map((fit) => fit.disease.id)).toContain(disease.id);
    },
    ({ disease, says }) => `${disease.id}: ${says}`,
  );

  it("is asked of two diseases at least", () => {
    expect(exclusions.length).toBeGreaterThanOrEqual(2);
  });
});

/** What a case says that meets a condition of a kind that exclusions have. */
function meeting({ finding, younger_than: days }: NonNullable<Statement["when"]>): object {
  if (days !== undefined) return { pig: { age: `${days - 1} d` } };
  const [system = "", organ = ""] = finding?.organs[0]?.split(".") ?? [];
  if (finding === undefined) throw new Error("an exclusion of a new kind: say here what meets it");
  return { [system]: { [organ]: [{ process: finding.process[0] }] } };
}

describe("an alarm that the authority excluded on a sample", () => {
  const sick = {
    ...plain,
    lymphoid: {
      spleen: [{ process: "enlargement", colour: "black", severity: "severe" }],
      gastrohepatic_nodes: [{ process: "haemorrhage", severity: "severe" }],
    },
  };
  const entry = (more: object) => ({
    authority: [
      {
        at: "2026-04-22",
        for: ["dark-spleen-and-haemorrhagic-nodes"],
        reached: "J. Fell",
        ground: "seen",
        sample: "PCR of spleen",
        ...more,
      },
    ],
  });
  const fitting = (id: string, subject: Subject): Fit => {
    const disease = diseases.get(id);
    if (disease === undefined) throw new Error(id);
    return fitOf(disease, subject);
  };
  const [excluded, released] = ["excluded", "released"].map((stands) =>
    subjectWith({ ...sick, ...entry({ stands }) }),
  );
  if (excluded === undefined || released === undefined) throw new Error("no visit");

  it("lowers the diseases that the sample excludes, and their forms, by one thing against", () => {
    for (const id of ["african-swine-fever", "chronic-african-swine-fever", "classical-swine-fever"])
      expect(countsOf(fitting(id, excluded)).against, id).toBe(countsOf(fitting(id, released)).against + 1);
  });

  it("leaves those that only look like them", () => {
    for (const id of ["pdns", "highly-pathogenic-prrs"])
      expect(countsOf(fitting(id, excluded)), id).toEqual(countsOf(fitting(id, released)));
  });

  it("is shown with the entry, whether it stands in the case or in the visit", () => {
    const [visit] = readAlarmFiles({ visit: entry({ stands: "excluded" }), cases: [sick] }).visits;
    const [one] = visit?.cases ?? [];
    if (visit === undefined || one === undefined) throw new Error("no visit");
    for (const subject of [visit, one, excluded])
      expect(
        fitting("african-swine-fever", subject).testedNegative.map(({ text, path }) => ({ text, path })),
      ).toEqual([{ text: "PCR of spleen", path: ["authority", 0] }]);
    expect(workupText([workUp(one)], makeStyle(false), { all: true }).replace(/\s+/g, " ")).toMatch(
      /against: the authority excluded it on a sample: PCR of spleen \(visit\.yaml:\d+\)/,
    );
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
