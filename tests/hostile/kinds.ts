/** Every kind of file that the program reads: where to find sound ones, and how the program is asked to read a changed one. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { smallCase } from "../cases/temporary.ts";
import { svg } from "../measure/drawn.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const read = (file: string): string => readFileSync(join(root, file), "utf8");
const filesIn = (folder: string, name: RegExp): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((file) => name.test(file))
    .map((file) => read(join(folder, file)));

export interface Kind {
  readonly name: string;
  /** Of so many files of all kinds, how many are of this one. */
  readonly share: number;
  readonly sound: readonly string[];
  /** The name of the changed file; none for standard input. */
  readonly file?: string;
  /** What lies beside it. */
  readonly beside?: Readonly<Record<string, string>>;
  /** Files that one command reads together, each in a folder of its own; one where a command takes no more. */
  readonly together: number;
  /** Commands that read it, one of which is called; `*` stands for the changed files. */
  readonly commands: readonly (readonly string[])[];
}

const farm = "tests/fixtures/birch-farm";
const visit = join(farm, "2026-04-20");
/** What the cases of a visit inherit. */
const withDefaults = `format: 1
visit: birch-2026-04-20
date: 2026-04-20
defaults:
  protocol: respiratory
  examiner: R. Sallow
  pig: {group: g-1, age: 58 d, class: weaner}
  death: {manner: euthanised, method: barbiturate, at: 2026-04-20T09:10}
  opened: {at: 2026-04-20T09:40, ambient: 14 °C, place: yard}
  safety: {protection: [gloves, mask], formalin: open-air, people: 2}
  respiratory: {turbinates: {section: premolar-1}}
`;
const cases = [
  ...filesIn("cases-example", /(?:pig-\d+|incomplete.*)\.yaml$/),
  read(join(visit, "pig-01.yaml")),
];
const farms = [read(join(farm, "farm.yaml")), ...filesIn("cases-example", /farm\.yaml$/)];
const hostile = filesIn("tests/fixtures/hostile", /\.yaml$/);
const aScale = filesIn("src/knowledge/scales", /\.yaml$/);
const drawings = filesIn("cases-example", /\.svg$/);
const square = (at: number, size: number) => [
  [at, 0],
  [at + size, 0],
  [at + size, size],
  [at, size],
  [at, 0],
]; // prettier-ignore
const collection = JSON.stringify(
  {
    type: "FeatureCollection",
    features: [
      ["cavity-left", square(0, 20)],
      ["dorsal-left", square(2, 6)],
      ["ventral-left", square(10, 6)],
      ["lobe-accessory", square(40, 30)],
      ["affected-accessory-1", square(45, 5)],
    ].map(([part, coordinates]) => ({
      type: "Feature",
      properties: { part, unit: "mm" },
      geometry: { type: "Polygon", coordinates: [coordinates] },
    })),
  },
  undefined,
  1,
);
const baseline = JSON.stringify({
  version: 1,
  findings: [{ file: "a.yaml", rule: "fact-missing", path: "pig.age" }],
});
const traced = smallCase(
  "a",
  "respiratory:\n  turbinates:\n    tracing: t.svg\n    measured: {dorsal_left: 1}\n",
);
const smallDrawing = svg(
  '<path id="cavity-left" d="M0 0h20v20h-20z"/><path id="dorsal-left" d="M2 2h6v6h-6z"/>',
);
const settings = read("cases-example/carcase.yaml");

export const kinds: readonly Kind[] = [
  {
    name: "case",
    share: 38,
    together: 25,
    sound: [...cases, ...hostile],
    file: "a.yaml",
    commands: [
      ...Array.from({ length: 4 }, () => ["lint", "*"]),
      ["lint", "--format", "json", "*"],
      ["lint", "--format", "sarif", "*"],
      ["lint", "--fix", "--dry-run", "*"],
      ["score", "*"],
      ["herd", "*"],
    ],
  },
  {
    name: "standard-input",
    share: 2,
    together: 1,
    sound: [...cases, ...hostile],
    commands: [["lint", "-"]],
  },
  {
    name: "visit",
    share: 8,
    together: 25,
    sound: [read(join(visit, "visit.yaml")), ...filesIn("cases-example", /visit\.yaml$/), withDefaults],
    file: "visit.yaml",
    beside: { "pig-01.yaml": read(join(visit, "pig-01.yaml")), "farm.yaml": read(join(farm, "farm.yaml")) },
    commands: [
      ["lint", "."],
      ["lint", "--fix", "--dry-run", "."],
      ["herd", "."],
    ],
  },
  {
    name: "farm",
    share: 8,
    together: 25,
    sound: farms,
    file: "farm.yaml",
    beside: { "a.yaml": smallCase("a") },
    commands: [["lint", "."]],
  },
  {
    name: "farm-to-draw-from",
    share: 1,
    together: 1,
    sound: farms,
    file: "farm.yaml",
    commands: [["plan", "choose", "--from", "farm.yaml", "--n", "2", "--seed", "1"]],
  },
  {
    name: "settings",
    share: 10,
    together: 25,
    sound: [
      settings,
      "format: 1\nscales: [our.yaml, shipped]\nrules: {treated-pig: note}\nlevel: 0.9\nprotocol: full\n",
    ],
    file: "carcase.yaml",
    beside: { "a.yaml": smallCase("a"), "our.yaml": aScale[0] ?? "" },
    commands: [
      ["lint", "."],
      ["score", "."],
      ["herd", "."],
    ],
  },
  {
    name: "scale",
    share: 8,
    together: 25,
    sound: aScale,
    file: "our.yaml",
    beside: { "a.yaml": smallCase("a"), "carcase.yaml": "format: 1\nscales: [our.yaml]\n" },
    commands: [
      ["lint", "."],
      ["score", "."],
    ],
  },
  {
    name: "baseline",
    share: 2,
    together: 1,
    sound: [baseline],
    file: "b.json",
    beside: { "a.yaml": smallCase("a") },
    commands: [["lint", "--baseline", "b.json", "a.yaml"]],
  },
  {
    name: "readings",
    share: 4,
    together: 1,
    sound: [read("cases-example/two-readers.csv")],
    file: "r.csv",
    commands: [["agree", "r.csv"]],
  },
  {
    name: "tally",
    share: 4,
    together: 1,
    sound: [read("cases-example/tally.csv")],
    file: "t.csv",
    commands: [["import", "t.csv", ".", "--visit", "a", "--date", "2026-03-14"]],
  },
  {
    name: "drawing",
    share: 8,
    together: 25,
    sound: [...drawings, smallDrawing],
    file: "t.svg",
    commands: [["measure", "*"]],
  },
  {
    name: "geojson",
    share: 6,
    together: 25,
    sound: [collection],
    file: "t.json",
    commands: [["measure", "*"]],
  },
  {
    name: "picture",
    share: 1,
    together: 25,
    sound: ["\u0089PNG\r\n", "GIF89a", "II*\u0000", "RIFF0000WEBP", "<svg/>"],
    file: "p.png",
    commands: [["measure", "*"]],
  },
  {
    name: "measured",
    share: 3,
    together: 25,
    sound: [traced],
    file: "a.yaml",
    beside: { "t.svg": smallDrawing },
    commands: [
      ["measure", "--write", "--dry-run", "*"],
      ["lint", "*"],
    ],
  },
  {
    name: "tags",
    share: 1,
    together: 1,
    sound: ["2217\n2218\n2219\n", "tag\n1\n"],
    file: "tags.txt",
    commands: [["plan", "choose", "--from", "tags.txt", "--n", "1", "--seed", "1"]],
  },
  {
    name: "ignored-files",
    share: 1,
    together: 1,
    sound: ["*.tmp\nb/\n!a.yaml\n# x\n", "**/a*\n[a-z]*.yaml\n"],
    file: ".gitignore",
    beside: { "a.yaml": smallCase("a"), [`${"ab".repeat(60)}.yaml`]: smallCase("b") },
    commands: [["lint", "."]],
  },
];
