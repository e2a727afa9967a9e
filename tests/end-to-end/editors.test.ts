/** What an editor shows: blanks, completion, hover and mistakes, in the clone and outside it. */
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { organs, systems } from "../../src/knowledge/index.ts";
import { Editor } from "./language-server.ts";
import { carcase, root, wide } from "./run.ts";

const farm = "cases-example/alder-farm/2026-03-14";
const line = "# yaml-language-server: $schema=../../../schemas/case.schema.json\n";
const start = "format: 1\ncase: alder-2026-03-14-99\n";
const inClone = (name: string): string => join(root, farm, name);

/** Where a text has a mark `|`, and the text without it. */
function marked(text: string): { readonly text: string; readonly line: number; readonly character: number } {
  const before = text.slice(0, text.indexOf("|")).split("\n");
  return {
    text: text.replace("|", ""),
    line: before.length - 1,
    character: before.at(-1)?.length ?? 0,
  };
}

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly then?: Schema;
  readonly $ref?: string;
}
const caseSchema: Schema & { readonly $defs: Readonly<Record<string, Schema>> } = JSON.parse(
  readFileSync(join(root, "schemas/case.schema.json"), "utf8"),
);

/** Every key of a case that may be missing, blank, with the groups that hold them: as lines of YAML. */
function blanks({ properties = {}, required = [], $ref, then }: Schema, indent = ""): string[] {
  if ($ref !== undefined) return blanks(caseSchema.$defs[$ref.slice("#/$defs/".length)] ?? {}, indent);
  if (then !== undefined) return blanks(then, indent);
  return Object.entries(properties).flatMap(([key, schema]) =>
    required.includes(key) || schema.required !== undefined
      ? []
      : [`${indent}${key}:`, ...blanks(schema, `${indent}  `)],
  );
}

describe("in the clone", () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await Editor.start(root);
  });
  afterAll(async () => expect(await editor.stop()).toBe(0));

  const at = async (name: string, text: string) => {
    const { text: whole, ...position } = marked(line + start + text);
    const file = inClone(name);
    await editor.underlined(file, whole);
    return { offered: await editor.offered(file, position), shown: await editor.shown(file, position) };
  };

  it("underlines no blank: systems, organs, and every key that may be missing", async () => {
    const ofOrgans = systems.map(
      ({ id }) =>
        `${id}:\n${organs
          .filter(({ system }) => system === id)
          .map(({ key }) => `  ${key}:\n`)
          .join("")}`,
    );
    const texts = [
      systems.map(({ id }) => `${id}:\n`).join(""),
      ofOrgans.join(""),
      `${blanks(caseSchema).join("\n")}\n`,
    ];
    expect(organs.length).toBeGreaterThan(60);
    expect(blanks(caseSchema).length).toBeGreaterThan(500);
    const found = await Promise.all(
      texts.map((text, index) => editor.underlined(inClone(`blank-${index}.yaml`), line + start + text)),
    );
    expect(found.flat()).toEqual([]);
  });

  it("underlines what the format itself needs while it is blank", async () => {
    const found = await editor.underlined(
      inClone("needed.yaml"),
      `${line}format: 1\ncase:\nsamples:\n  - id:\n    from: blood\n`,
    );
    expect(found.map(({ range }) => range.start.line)).toEqual([2, 4]);
  });

  it("says what is wrong, once, where it is", async () => {
    const mistakes = [
      ["a key of an organ's system", "external:\n  earz: normal\n", 4, "Property earz is not allowed."],
      ["a key of an organ", "external:\n  ears: {finding: 1}\n", 4, "Property finding is not allowed."],
      ["a blank key", "pig:\n  sexx:\n", 4, "Property sexx is not allowed."],
      [
        "the word of an organ",
        "external:\n  ears: nomal\n",
        4,
        "Write normal, findings such as [{process: enlargement}], or {not_examined: the reason}",
      ],
      [
        "a word of a list",
        "pig:\n  sex: femal\n",
        4,
        'Value is not accepted. Valid values: "female", "male", "castrate".',
      ],
      ["a quantity", "pig:\n  weight: 17 pounds\n", 4, "Write: A weight with its unit, g or kg"],
      ["text in the place of keys", "pig: a gilt\n", 3, "Write keys on lines of their own below it"],
    ] as const;
    const found = await Promise.all(
      mistakes.map(([what, text]) => editor.underlined(inClone(`${what}.yaml`), line + start + text)),
    );
    expect(found.map((all) => all.map((one) => [one.range.start.line, one.message]))).toEqual(
      mistakes.map(([, , at, message]) => [[at, message]]),
    );
  });

  it("offers every way to answer an organ, beside its key and in braces", async () => {
    const answers = ["normal", "findings", "not_examined (why)", "not_assessable (why)"];
    const texts = ["external:\n  ears: |\n", "external: {ears: |}\n", "liver_pancreas:\n  liver: |\n"];
    const all = await Promise.all(texts.map((text, index) => at(`answers-${index}.yaml`, text)));
    for (const { offered } of all) {
      expect(offered.map(({ label }) => label)).toEqual(answers);
      expect(offered.map(({ insertText }) => insertText)).toContain('{not_examined: "$1"}');
    }
  });

  it("offers what it inserts in a form that is not underlined, but for what is still to be written", async () => {
    const { offered } = await at("inserted.yaml", "external:\n  ears: |\n");
    const filled = ["normal", "abscess", "skull left closed", "autolysed"];
    const texts = offered.map(({ insertText }, index) => insertText.replace("$1", filled[index] ?? ""));
    const found = await Promise.all(
      texts.map((text, index) =>
        editor.underlined(inClone(`filled-${index}.yaml`), `${line}${start}external:\n  ears: ${text}\n`),
      ),
    );
    expect(found).toEqual([[], [], [], []]);
  });

  it("never offers null", async () => {
    const texts = [
      "pig: |\n",
      "pig:\n  sex: |\n",
      "samples: |\n",
      "pig:\n  weight: |\n",
      "selection:\n  treated: |\n",
    ];
    const all = await Promise.all(texts.map((text, index) => at(`null-${index}.yaml`, text)));
    for (const { offered } of all) {
      expect(offered.map(({ label }) => label)).not.toContain("null");
    }
  });

  it("says of a blank organ what to look for, and that it is not answered", async () => {
    const { shown } = await at("hover.yaml", "external:\n  ea|rs:\n");
    expect(shown).toContain("Ears: rims");
    expect(shown).toContain("not yet answered; never counts as normal");
  });

  it("underlines nothing in an example in which the reader finds no fault, and something in every other", async () => {
    const folder = join(root, "cases-example");
    const archive = readCases([folder]);
    const faulty = new Set(
      [...archive.cases, ...archive.visits, ...archive.farms].flatMap(({ faults }) =>
        faults.map(({ file }) => relative(folder, file)),
      ),
    );
    const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) =>
      name.endsWith(".yaml"),
    );
    const underlined = await Promise.all(
      files.map(
        async (name) =>
          [
            name,
            await editor.underlined(join(folder, name), readFileSync(join(folder, name), "utf8")),
          ] as const,
      ),
    );
    expect(files.length).toBeGreaterThan(30);
    expect(
      underlined
        .filter(([, found]) => found.length > 0)
        .map(([name]) => name)
        .sort(),
    ).toEqual([...faulty].sort());
  });
});

describe("outside the clone", () => {
  const folder = mkdtempSync(join(tmpdir(), "carcase-editors-"));
  const visit = join(folder, "alder-farm/2026-03-14");
  const settings = JSON.parse(
    /^```json\n([\s\S]*?)^```$/m.exec(readFileSync(join(root, "docs/editors.md"), "utf8"))?.[1] ?? "",
  );
  let written = "";
  beforeAll(() => {
    mkdirSync(join(folder, ".git"));
    mkdirSync(visit, { recursive: true });
    const { code, out } = carcase(["schema", "--write", "schemas"], { cwd: folder });
    expect(code).toBe(0);
    written = /^# yaml-language-server: \S+$/m.exec(out)?.[0] ?? "";
  });

  it.each([
    ["by the line that the command shows", true],
    ["by the settings that the page shows", false],
  ])("completes, shows and underlines %s", async (_how, byLine) => {
    const editor = await Editor.start(folder, byLine ? {} : settings);
    const file = join(visit, "pig-01.yaml");
    const { text, ...position } = marked(
      `${byLine ? `${written}\n` : ""}${start}external:\n  ears: |\n  earz: normal\n`,
    );
    const found = await editor.underlined(file, text);
    expect(found.map(({ message }) => message)).toEqual(["Property earz is not allowed."]);
    expect((await editor.offered(file, position)).map(({ label }) => label)).toContain("not_examined (why)");
    expect(await editor.shown(file, { ...position, character: 3 })).toContain("not yet answered");
    expect(await editor.stop()).toBe(0);
  });

  it("finds the schema of each kind by the settings that the page shows", async () => {
    const editor = await Editor.start(folder, settings);
    const files = [
      ["carcase.yaml", "rules"],
      ["scales/our-scale.yaml", "boundary"],
      ["alder-farm/farm.yaml", "weaning_age"],
      ["alder-farm/2026-03-14/visit.yaml", "environment"],
    ] as const;
    const found = await Promise.all(
      files.map(([name, key]) => editor.underlined(join(folder, name), `${key}:\nearz: normal\n`)),
    );
    for (const [index, [, key]] of files.entries()) {
      const messages = found[index]?.map(({ message }) => message);
      expect(messages).toContain("Property earz is not allowed.");
      expect(messages).not.toContain(`Property ${key} is not allowed.`);
    }
    expect(await editor.stop()).toBe(0);
  });

  it("has lint --fix put the same line in, and lint says nothing of it", () => {
    const pig = readFileSync(join(root, "tests/fixtures/birch-farm/2026-04-20/pig-01.yaml"), "utf8");
    writeFileSync(join(visit, "pig-01.yaml"), line.replace("schemas", "nowhere") + pig);
    const lint = (...args: string[]) =>
      carcase(["lint", "--only", "schema-line-astray", ...args, "."], { cwd: folder, env: wide });
    expect(lint().out).toContain(`Write ${written}, or take the line out. [schema-line-astray]`);
    lint("--fix");
    expect(readFileSync(join(visit, "pig-01.yaml"), "utf8").split("\n")[0]).toBe(written);
    expect(lint().out).toContain("nothing found");
  });

  it("writes nothing over what is not its own, renews what is, and leaves alone what is the same", () => {
    const there = (name: string): string => join(folder, "schemas", name);
    const write = () => carcase(["schema", "--write", "schemas"], { cwd: folder });
    expect(write().out).toMatch(/case\.schema\.json +unchanged/);
    const text = readFileSync(there("farm.schema.json"), "utf8");
    writeFileSync(there("farm.schema.json"), text.replace("The name of the farm", "The name"));
    expect(write().out).toMatch(/farm\.schema\.json +renewed/);
    expect(readFileSync(there("farm.schema.json"), "utf8")).toBe(text);
    writeFileSync(there("visit.schema.json"), "{}\n");
    writeFileSync(there("case.schema.json"), text);
    const { code, err } = write();
    expect({ code, err }).toEqual({
      code: 2,
      err: "carcase: --write: schemas/case.schema.json is there and is no schema of carcase; nothing was written. Move it away, or name another folder.\n",
    });
    expect(readFileSync(there("visit.schema.json"), "utf8")).toBe("{}\n");
    expect(readFileSync(there("case.schema.json"), "utf8")).toBe(text);
  });

  it.each([
    ["", "names no folder"],
    ["/proc/carcase", "cannot write into /proc/carcase"],
    ["pipes", "is no schema of carcase"],
    ["pipes/case.schema.json/schemas", "cannot write"],
  ])("says why it cannot write into %j, and neither waits nor writes", (into, says) => {
    mkdirSync(join(folder, "pipes"), { recursive: true });
    if (!existsSync(join(folder, "pipes/case.schema.json")))
      execFileSync("mkfifo", [join(folder, "pipes/case.schema.json")]);
    const { code, err } = carcase(["schema", "--write", into], { cwd: folder });
    expect(code).toBe(2);
    expect(err).toMatch(/^carcase: .*\n$/);
    expect(err).toContain(says);
    expect(readdirSync(join(folder, "pipes"))).toEqual(["case.schema.json"]);
  });

  it("prints one schema, as it writes it", () => {
    const { out } = carcase(["schema", "scale"]);
    expect(out).toBe(readFileSync(join(folder, "schemas/scale.schema.json"), "utf8"));
    expect(carcase(["schema", "cas"])).toEqual({
      code: 2,
      out: "",
      err: 'carcase: there is no schema "cas". Did you mean case?\n',
    });
  });
});
