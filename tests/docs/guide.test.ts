/**
 * The visit of the guide is typed as the guide says, and what that costs is counted; the guide prints the numbers, and
 * files as they are in the end. `npm run docs` writes them.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { carcase } from "../end-to-end/run.ts";
import { Terminal } from "../interview/terminal.ts";
import { command, rounds, type Typed } from "./six-pigs.ts";

const guide = fileURLToPath(new URL("../../docs/guide.md", import.meta.url));
const update = process.env.UPDATE_DOCS !== undefined;
const folder = temporaryFolder();
const visit = "alder-farm/2026-03-14";
const text = (file: string): string => readFileSync(join(folder, visit, file), "utf8");

/** What was typed into the files so far, with the command, which is one line. */
const cost = { lines: 1, characters: ["carcase", ...command].map(quoted).join(" ").length, rounds: 0 };
const left: number[] = [];

/** As it is typed in a shell. */
function quoted(word: string): string {
  return word.includes(" ") ? `"${word}"` : word;
}

/** Puts each text behind what stands before it. */
function typed(before: string, edits: readonly Typed[]): string {
  return edits.reduce((now, [after, what]) => {
    const parts = now.split(after);
    expect(parts, `${after} must stand there once`).toHaveLength(2);
    cost.characters += what.length;
    return `${parts[0]}${after}${what}${parts[1]}`;
  }, before);
}

/** Lines that were not there before. */
function newLines(before: string, after: string): number {
  const known = new Set(before.split("\n"));
  return after.split("\n").filter((line) => !known.has(line)).length;
}

const printed = (): string =>
  `Six pigs, from nothing to a clean \`lint\`: ${cost.lines} lines, ${cost.characters.toLocaleString("en-GB")} characters, ${cost.rounds} rounds of linting.`;

beforeAll(() => {
  const { code, err } = carcase(command, { cwd: folder });
  expect([code, err]).toEqual([0, ""]);
  for (const round of rounds) {
    for (const [file, edits] of Object.entries(round)) {
      const before = text(file);
      const after = typed(before, edits);
      cost.lines += newLines(before, after);
      writeFileSync(join(folder, visit, file), after);
    }
    cost.rounds++;
    const { out } = carcase(["lint", "--format", "json", "alder-farm"], { cwd: folder });
    left.push(JSON.parse(out).findings.length);
  }
});

/** What the interview asks of a healthy pig under the full protocol, and the keys that answer. */
const told: Readonly<Record<string, string>> = {
  "Vesicle, erosion": "n",
  "Haemorrhage of the skin": "n",
  "Swelling of throat": "n",
  "Blood at nostrils": "n",
  "The pig's tag or mark (": "4155\r",
  "The sex ": "f",
  "Whether the pig was treated": "n",
  "When the pig died": "1130\r",
  "The body weight (": "14.8\r",
  "When the pig was opened": "1145\r",
  "The state of the carcass": "f",
  "Lymph nodes with blood": "n",
  "Jelly or blood-stained fluid": "n",
  "Petechiae of kidney": "n",
  "Pale streaks of the heart": "n",
  "Spleen big": "n",
  "Round or button ulcers": "n",
  ...Object.fromEntries(
    [
      ...["External examination. Skin", "External examination. Subcutis", "Lymphoid organs. Superficial"],
      ...["Body cavities. Peritoneum", "Intestine. Mesentery", "Lymphoid organs. Tonsil"],
      ...["Respiratory system. Larynx", "Heart and vessels. Pericardium", "Respiratory system. Lungs"],
      ...["Lymphoid organs. Bronchial", "Heart and vessels. Heart,", "Lymphoid organs. Spleen"],
      ...["Liver and pancreas. Liver", "Urinary system. Kidneys", "Urinary system. Bladder"],
      ...["Respiratory system. Turbinates", "Stomach. Stomach content", "Lymphoid organs. Mesenteric"],
      "Intestine. Jejunum",
    ].map((group) => [group, "n"]),
  ),
};

async function keysOfHealthyPig(): Promise<number> {
  const cwd = temporaryFolder();
  carcase(command, { cwd });
  writeFileSync(join(cwd, visit, "visit.yaml"), text("visit.yaml"));
  const terminal = new Terminal(["record", `${visit}/pig-05.yaml`], cwd);
  await terminal.play(told, "Nothing more is asked.");
  expect(await terminal.exit).toBe(0);
  const { out } = carcase(["lint", "--format", "json", `${visit}/pig-05.yaml`], { cwd });
  expect(JSON.parse(out)).toMatchObject({ findings: [], summary: { skipped: 0 } });
  return terminal.keys;
}

describe("the visit of the guide", () => {
  it("is told in a terminal with at most 90 keys for a healthy pig under the full protocol", async () => {
    const keys = await keysOfHealthyPig();
    expect(keys).toBeLessThanOrEqual(90);
    const page = readFileSync(guide, "utf8");
    const sentence = `A healthy pig under the full protocol takes ${keys} key presses.`;
    const now = page.replace(/A healthy pig under the full protocol takes \d+ key presses\./, sentence);
    if (update) writeFileSync(guide, now);
    else expect(page).toContain(sentence);
  });

  it("costs at most 60 lines or 2,200 characters, and two rounds of linting", () => {
    expect(cost.lines <= 60 || cost.characters <= 2200).toBe(true);
    expect(cost.rounds).toBeLessThanOrEqual(2);
    expect(left.at(-1)).toBe(0);
  });

  it("is complete: every organ that had to be was looked at, and each pig has a grade", () => {
    const { out } = carcase(["lint", "--format", "json", "alder-farm"], { cwd: folder });
    expect(JSON.parse(out).summary).toMatchObject({ cases: 6, skipped: 0, errors: 0, warnings: 0 });
    const score = carcase(["score", "--scale", "maff-1978", "--format", "csv", visit], { cwd: folder });
    expect(score.out.trim().split("\n")).toHaveLength(7);
    expect(score.err).toBe("");
  });

  it("has healthy pigs of ten lines without their comments", () => {
    const lines = text("pig-05.yaml").split("\n");
    expect(lines.filter((line) => line !== "" && !line.startsWith("#")).length).toBeLessThanOrEqual(10);
  });

  it("stands in the guide, with what it costs", () => {
    const page = readFileSync(guide, "utf8");
    const now = page
      .replace(/^Six pigs, from nothing .*$/m, printed())
      .replace(/(```yaml visit\n# visit\.yaml\n)[\s\S]*?(?=```)/, `$1${text("visit.yaml")}`)
      .replace(/(```yaml case\n# pig-01\.yaml\n)[\s\S]*?(?=```)/, `$1${text("pig-01.yaml")}`)
      .replace(/(```yaml case\n# pig-05\.yaml\n)[\s\S]*?(?=```)/, `$1${text("pig-05.yaml")}`);
    if (update) writeFileSync(guide, now);
    else expect(page).toBe(now);
    for (const part of [printed(), text("visit.yaml"), text("pig-01.yaml"), text("pig-05.yaml")])
      expect(now).toContain(part);
    expect(now).toContain(
      ["carcase", ...command]
        .map(quoted)
        .join(" ")
        .replaceAll(/ (?=--(?:pigs|method|vet))/g, " \\\n    "),
    );
  });
});
