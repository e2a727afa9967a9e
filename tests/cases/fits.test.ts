/** The short check of a file, the full one, which explains, and the schema for editors agree, whatever is left blank. */
import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { errorsOf } from "../../src/cases/faults/full-validator.ts";
import { isBlankUnknown, validate } from "../../src/cases/faults/validate.ts";
import { withoutBlanks } from "../../src/cases/model/blanks.ts";
import { caseFits, farmFits, settingsFits, visitFits } from "../../src/generated/fits.js";

const root = new URL("../..", import.meta.url).pathname;
const kinds = { case: caseFits, visit: visitFits, farm: farmFits, settings: settingsFits } as const;
type Kind = keyof typeof kinds;

const kindOf = (file: string): Kind | undefined =>
  file.endsWith("visit.yaml")
    ? "visit"
    : file.endsWith("farm.yaml")
      ? "farm"
      : file.endsWith("carcase.yaml")
        ? "settings"
        : /pig-\d+\.yaml$/.test(file)
          ? "case"
          : undefined;

/** Every value of a document in turn put out of order: of another kind, with a key too many, or left out. */
function* spoilt(value: unknown): Generator<unknown> {
  yield typeof value === "number" ? "?" : -1e9;
  yield null;
  if (typeof value !== "object" || value === null) return;
  const list = Array.isArray(value);
  if (!list)
    yield* [
      { ...value, no_such_key: 1 },
      { ...value, no_such_key: null },
    ];
  for (const [key, item] of Object.entries(value)) {
    const put = (one: unknown) => (list ? value.with(Number(key), one) : { ...value, [key]: one });
    yield list ? value.filter((_, index) => index !== Number(key)) : without(value, key);
    for (const one of spoilt(item)) yield put(one);
  }
}

const without = (value: object, left: string) =>
  Object.fromEntries(Object.entries(value).filter(([key]) => key !== left));

/** What holds names that the format does not list. */
const free = new Set(["grades", "groups", "rules", "protocols", "indicators"]);

function hasBlankName(value: unknown, isFree = false): boolean {
  if (typeof value !== "object" || value === null) return false;
  return Object.entries(value).some(
    ([key, item]) => (isFree && item === null) || hasBlankName(item, free.has(key)),
  );
}

describe("the short check of a file", () => {
  const files = ["cases-example", "tests/fixtures/birch-farm"].flatMap((folder) =>
    readdirSync(`${root}/${folder}`, { recursive: true, encoding: "utf8" }).map(
      (file) => `${folder}/${file}`,
    ),
  );
  it.each(Object.keys(kinds) as Kind[])("says of every %s file what the full one says", (kind) => {
    const full = (value: unknown): boolean =>
      errorsOf(kind, withoutBlanks(value)).length === 0 && !errorsOf(kind, value).some(isBlankUnknown);
    const editor = new Ajv2020({ strict: false }).compile(
      JSON.parse(readFileSync(`${root}/schemas/${kind}.schema.json`, "utf8")),
    );
    let wrong = 0;
    let right = 0;
    // A few whole files are enough for the mutants; every file is checked as it stands.
    for (const [index, file] of files.filter((one) => kindOf(one) === kind).entries()) {
      const document: unknown = parse(readFileSync(`${root}/${file}`, "utf8"));
      const mutants = index < 2 ? [document, ...spoilt(document)] : [document];
      for (const one of mutants) {
        const expected = full(one);
        // Of a blank under a free name the short check says that it does not know.
        const short = kinds[kind](one) || (expected && hasBlankName(one));
        if (short !== expected || editor(one) !== expected)
          expect.fail(`${file}: ${expected} ${short} ${editor(one)} ${JSON.stringify(one).slice(0, 2000)}`);
        if (expected) right += 1;
        else wrong += 1;
      }
    }
    expect(right).toBeGreaterThan(0);
    expect(wrong).toBeGreaterThan(right / 2);
  });

  it("lets an editor pass the numbers of samples that the reader takes, and no others", () => {
    const editors = (["case", "visit"] as const).map((kind) =>
      new Ajv2020({ strict: false }).compile(
        JSON.parse(readFileSync(`${root}/schemas/${kind}.schema.json`, "utf8")),
      ),
    );
    const documents = (id: unknown) => [
      { format: 1, case: "x-1", samples: [{ id, from: "blood" }] },
      { format: 1, visit: "x", date: "2026-04-20", parcels: [{ samples: [id] }] },
    ];
    for (const id of [1, 0, "1", "03-A", 1.5, -1, true, "a b", [1]]) {
      const read = (["case", "visit"] as const).map(
        (kind, at) => validate(kind, documents(id)[at] ?? {}).faults.length === 0,
      );
      expect(
        editors.map((fits, at) => fits(documents(id)[at])),
        String(id),
      ).toEqual(read);
    }
  });
});
