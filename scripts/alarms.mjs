// How many of the published outbreaks under tests/fixtures/outbreaks raise an alarm by the criteria, by picture and round, and what was
// counted of each round before anybody looked. Of rounds by which patterns may be set (`work`) those that go wrong are named; of an
// `untouched` one they are only counted. `--all` names all, and is for the end.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "yaml";
import "./setup.mjs";

const { findAlarms, readCases } = await import("../dist/index.js");
const root = fileURLToPath(new URL("../tests/fixtures/outbreaks/", import.meta.url));

const outbreaks = readdirSync(root, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && existsSync(join(root, entry.name, "source.yaml")))
  .map(({ name }) => {
    const folder = join(root, name);
    const source = parse(readFileSync(join(folder, "source.yaml"), "utf8"));
    const files = readdirSync(folder).filter((file) => /^(?:pig-.*|visit)\.yaml$/.test(file));
    const { cases, visits } = readCases(files.map((file) => join(folder, file)));
    const subjects = [...visits, ...cases.filter((one) => one.visit === undefined)];
    const alarms = new Set(subjects.flatMap(findAlarms).map(({ pattern }) => pattern.id));
    const must = source.by_criteria ?? source.expected.alarm;
    return { name, source, must, alarms: [...alarms], right: must === (alarms.size > 0 ? "yes" : "no") };
  });

const pictures = [...new Set(outbreaks.map(({ source }) => source.picture))].sort();
const rounds = [...new Set(outbreaks.map(({ source }) => source.round))].sort((a, b) => a - b);
const cell = (found) => `${found.filter(({ alarms }) => alarms.length > 0).length} of ${found.length}`;
const row = (cells) =>
  cells
    .map((text, at) => text.padEnd(at === 0 ? 30 : 22))
    .join("")
    .trimEnd();

for (const [title, expected] of [
  ["Must alarm: alarms raised", "yes"],
  ["Need not alarm: alarms raised", "no"],
]) {
  const chosen = outbreaks.filter(({ must }) => must === expected);
  console.log(`${title}\n${row(["picture", ...rounds.map((round) => `round ${round}`)])}`);
  for (const picture of [...pictures, undefined]) {
    const of = rounds.map((round) =>
      chosen.filter(({ source }) => source.round === round && (picture ?? source.picture) === source.picture),
    );
    if (of.flat().length > 0) console.log(row([picture ?? "all", ...of.map(cell)]));
  }
  console.log("");
}

const shown = ([raised, of]) => `${raised} of ${of}`;
console.log("Counted before anybody looked: must alarm, need not");
for (const { round, before_looking: counted } of parse(readFileSync(join(root, "rounds.yaml"), "utf8"))
  .rounds)
  if (counted !== undefined)
    console.log(row([`round ${round}`, shown(counted.must), shown(counted.need_not)]));
console.log("");

const all = process.argv.includes("--all");
const wrong = outbreaks.filter(({ source, right }) => !right && (all || source.half === "work"));
for (const { name, source, must, alarms } of wrong)
  console.log(`round ${source.round} ${name}: expected ${must}, found ${alarms.join(", ") || "none"}`);
