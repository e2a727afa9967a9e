/** A fault in one place neither hides nor invents what is written elsewhere. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { validate } from "../../src/cases/faults/validate.ts";
import { organState } from "../../src/cases/model/organ-state.ts";
import { type Path, valueAt } from "../../src/cases/model/path.ts";
import { writtenPath } from "../../src/cases/model/written-path.ts";
import { parseYaml } from "../../src/cases/yaml/parse-yaml.ts";
import { organs } from "../../src/knowledge/index.ts";
import { runs } from "../random.ts";
import { readingCase } from "./reading.ts";

const file = fileURLToPath(new URL("../fixtures/birch-farm/2026-04-20/pig-01.yaml", import.meta.url));
const parsed = parseYaml(readFileSync(file, "utf8"));
if (!parsed.ok) throw new Error("the model case cannot be read");
const model = parsed.document.value as Record<string, unknown>;

const states = (raw: object): Map<string, unknown> =>
  new Map(organs.map((organ) => [organ.id, organState(raw, organ)]));

/** Every path of the model case, leaves and groups. */
function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  return [
    path,
    ...Object.entries(value).flatMap(([key, inner]) =>
      pathsOf(inner, [...path, Array.isArray(value) ? Number(key) : key]),
    ),
  ];
}

function replaced(path: Path, value: unknown): Record<string, unknown> {
  const copy = structuredClone(model);
  const parent = valueAt(copy, path.slice(0, -1)) as Record<string | number, unknown>;
  parent[path.at(-1) ?? ""] = value;
  return copy;
}

describe("the valid part", () => {
  it("is all of the model case", () => {
    const { faults, raw, record } = validate("case", model);
    expect(faults).toEqual([]);
    expect(raw).toEqual(model);
    expect(record).toEqual(model);
  });

  const wrong = fc.constantFrom<unknown>(
    "qqq",
    -77777,
    true,
    [],
    [[]],
    {},
    { qqq: 1 },
    ["qqq"],
    [{ process: "qqq" }],
    [{ qqq: 1 }],
    "",
    { process: "qqq" },
    { left: { qqq: 2 } },
  );
  const paths = pathsOf(model).filter((path) => path.length > 0);

  it("keeps every other organ as it was, whatever is wrong in one place", () => {
    const before = states(model);
    fc.assert(
      fc.property(fc.constantFrom(...paths), wrong, (path, value) => {
        const { faults, raw } = validate("case", replaced(path, value));
        const after = states(raw);
        for (const [id, state] of before) {
          const [system, organ] = id.split(".");
          const touched = path[0] === system && (path.length === 1 || path[1] === organ);
          if (!touched) expect([id, after.get(id)]).toEqual([id, state]);
        }
        if (faults.length > 0)
          expect(faults.every((fault) => fault.path[0] === path[0] || fault.path.length === 0)).toBe(true);
      }),
      { numRuns: runs(1000) },
    );
  });

  it("fits the schema, whatever is wrong in many places", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constantFrom(...paths), wrong), { maxLength: 12 }), (changes) => {
        let value = model;
        for (const [path, one] of changes) {
          const copy = structuredClone(value);
          const parent = valueAt(copy, path.slice(0, -1));
          if (typeof parent !== "object" || parent === null) continue;
          (parent as Record<string | number, unknown>)[path.at(-1) ?? ""] = one;
          value = copy;
        }
        const again = validate("case", validate("case", value).raw).faults;
        expect(
          again.filter(
            ({ kind, path }) =>
              kind !== "missing-key" || (path.length > 1 && typeof path.at(-2) !== "number"),
          ),
        ).toEqual([]);
      }),
      { numRuns: runs(300) },
    );
  });

  it.each([
    [
      "a wrong word in a finding leaves the others, and the finding in its place",
      "liver_pancreas:\n  liver: {weight: 900 g, findings: [{process: nodule}, {process: qqq}]}\n  pancreas: [{process: oedema}]\n",
      {
        liver_pancreas: {
          liver: { weight: "900 g", findings: [{ process: "nodule" }, {}] },
          pancreas: [{ process: "oedema" }],
        },
      },
    ],
    [
      "a sample that lacks something keeps its place, and what it has",
      "samples: [{id: a, from: respiratory.lungs}, {id: b}]\nnote: x\n",
      {
        samples: [{ id: "a", from: "respiratory.lungs" }, { id: "b" }],
        note: "x",
      },
    ],
    [
      "a wrong detail of a treatment takes the treatment, not the selection",
      "selection: {basis: clinical, treated: {with: 3}}\n",
      { selection: { basis: "clinical" } },
    ],
    [
      "a missing key takes the group that needs it",
      "authority: {by: me}\npig: {sex: female}\n",
      { pig: { sex: "female" } },
    ],
    ["an unknown key goes alone", "pig: {sex: female, colour: pink}\n", { pig: { sex: "female" } }],
    [
      "a blank stays blank",
      "liver_pancreas: {liver: , pancreas: norml}\n",
      { liver_pancreas: { liver: null } },
    ],
    [
      "one wrong side leaves the other",
      "urinary: {kidneys: {left: normal, right: nomal}}\n",
      { urinary: { kidneys: { left: "normal" } } },
    ],
    [
      "one wrong lobe leaves the others",
      "respiratory: {lungs: {consolidation: {left_cranial: 120, accessory: 5}}}\n",
      { respiratory: { lungs: { consolidation: { accessory: 5 } } } },
    ],
    [
      "a value that is referred to is refused in some places and kept in the other",
      "cardiovascular: {heart: &l {consolidation: {accessory: 5}}}\nrespiratory: {lungs: *l}\nliver_pancreas: {liver: *l}\n",
      {
        cardiovascular: { heart: {} },
        respiratory: { lungs: { consolidation: { accessory: 5 } } },
        liver_pancreas: { liver: {} },
      },
    ],
    [
      "a shared value is refused in one place and kept in the other",
      "respiratory: {lungs: &l {consolidation: {accessory: 5}}}\nliver_pancreas: {liver: *l}\n",
      { respiratory: { lungs: { consolidation: { accessory: 5 } } }, liver_pancreas: { liver: {} } },
    ],
  ])("%s", (_, keys, rest) => {
    expect(readingCase(keys).raw).toEqual({ format: 1, case: "x-1", ...rest });
  });
});

describe("samples that are numbered", () => {
  it("have the text of the number as their id", () => {
    const raw = { format: 1, case: "x-1", samples: [{ id: 3, from: "blood" }], pig: { sex: "F" } };
    const { faults, record } = validate("case", raw);
    expect(record.samples).toEqual([{ id: "3", from: "blood" }]);
    expect(faults.map(({ path }) => path)).toEqual([["pig", "sex"]]);
  });

  it("are so in a parcel", () => {
    const { faults, record } = validate("visit", {
      format: 1,
      visit: "v-1",
      parcels: [{ samples: [3, "4"] }],
    });
    expect(record.parcels).toEqual([{ samples: ["3", "4"] }]);
    expect(faults.filter(({ path }) => path.includes("samples"))).toEqual([]);
  });
});

describe("an entry that is no value of its list", () => {
  const signs = ["fever", "qqq", "cough", { a: 1 }, "sneezing"];
  const value = { format: 1, case: "x-1", selection: { signs } };
  const { faults, record } = validate("case", value);
  const subject = { document: { value }, record, faults };

  it("goes alone", () => {
    expect(valueAt(record, ["selection", "signs"])).toEqual(["fever", "cough", "sneezing"]);
  });

  it("leaves the place in the file of every other known", () => {
    expect([0, 1, 2].map((at) => writtenPath(subject, ["selection", "signs", at]).at(-1))).toEqual([0, 2, 4]);
    expect(writtenPath(subject, ["samples", 3, "id"])).toEqual(["samples", 3, "id"]);
  });

  it("takes the list with it when it is the only one", () => {
    expect(validate("case", { ...value, selection: { signs: ["qqq"] } }).record.selection).toEqual({});
  });

  it("leaves an empty entry in a list of findings or samples", () => {
    const raw = { ...value, samples: ["spleen", { id: "1-B", from: "lymphoid.spleen" }] };
    expect(validate("case", raw).record.samples).toEqual([
      { id: "", from: "" },
      { id: "1-B", from: "lymphoid.spleen" },
    ]);
  });
});
