/** The installed library says of faulty files what the sources say, wherever the files lie. */
import { cpSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { fixText } from "../../src/fix/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { machine, root } from "./machine.ts";

const desk = machine();
const archive = temporaryFolder();
let place = "";

/** A fault in each kind of file that has a schema of its own, but a baseline. */
const faulty = {
  "carcase.yaml": "format: 1\nscales: [own.yaml]\n",
  "other/carcase.yaml": "format: 1\nlevel: high\n",
  "other/c.yaml": "format: 1\ncase: d\n",
  "own.yaml": "format: 1\nid: own\ntitle: 3\n",
  "farm/farm.yaml": "format: 1\nfarm: f\ngroups: {g: {head: many}}\n",
  "farm/v/visit.yaml": "format: 1\nvisit: v\ndate: yesterday\ncases: [c]\n",
  "farm/v/c.yaml": "format: 1\ncase: c\npig: {sex: hen}\nrespiratory: {lungs: [{process: wheezing}]}\n",
};
const examples = join(root, "cases-example/incomplete");
const texts = readdirSync(examples)
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => readFileSync(join(examples, name), "utf8"))
  .concat(faulty["farm/v/c.yaml"]);

/** Runs code of a user of the library, and reads what it prints. */
function printed(code: string): unknown {
  writeFileSync(join(place, "use.mjs"), code);
  return JSON.parse(desk.runs("node use.mjs", place));
}

beforeAll(() => {
  put(archive, faulty);
  cpSync(examples, join(archive, "examples"), { recursive: true });
  writeFileSync(join(archive, "texts.json"), JSON.stringify(texts));
  place = desk.place();
  desk.runs("npm install --prefix . ./carcase-*.tgz", place);
});

it("finds the same in faulty files that lie elsewhere", () => {
  const read = readCases([archive]);
  const ours = [...read.unreadable, ...lintCases(read).findings];
  const files = new Set(ours.map(({ file }) => file));
  for (const name of Object.keys(faulty).filter((one) => one !== "carcase.yaml"))
    expect(files).toContain(join(archive, name));
  expect(ours.length).toBeGreaterThan(100);

  const code = `import { lintCases, readCases } from "carcase";
    const read = readCases([${JSON.stringify(archive)}]);
    console.log(JSON.stringify([...read.unreadable, ...lintCases(read).findings]));`;
  expect(printed(code)).toEqual(JSON.parse(JSON.stringify(ours)));
});

it("puts right the same in faulty texts", () => {
  const code = `import { readFileSync } from "node:fs"; import { fixText } from "carcase";
    const texts = JSON.parse(readFileSync(${JSON.stringify(join(archive, "texts.json"))}, "utf8"));
    console.log(JSON.stringify(texts.map((text) => fixText(text, { kind: "case" }))));`;
  expect(printed(code)).toEqual(texts.map((text) => fixText(text, { kind: "case" })));
});

it("explains a faulty baseline", () => {
  writeFileSync(join(place, "known.json"), "[1]");
  const { code, err } = desk.run(`npx carcase lint --baseline known.json "${archive}"`, place);
  expect(code).toBe(2);
  expect(err).toContain("known.json");
});

it("brings its types, which need nothing else", () => {
  put(place, {
    "use.mts": `import { lintCases, readCases, scales } from "carcase";
      import { binomialInterval } from "carcase/statistics";
      const rule: string | undefined = lintCases(readCases(["."])).findings[0]?.rule;
      const lower: number = binomialInterval(5, 30).lower;
      const range: readonly number[] | undefined = scales.get("maff-1978")?.range;
      // @ts-expect-error the name of a rule is a text
      const number: number | undefined = rule;
      export { lower, number, range };`,
    "tsconfig.json": JSON.stringify({
      compilerOptions: {
        strict: true,
        module: "nodenext",
        target: "es2023",
        lib: ["es2023"],
        noEmit: true,
        types: [],
        skipLibCheck: false,
      },
      files: ["use.mts"],
    }),
  });
  desk.runs(`node "${join(root, "node_modules/typescript/bin/tsc")}"`, place);
});
