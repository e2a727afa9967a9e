// Lint with all rules on beside general-purpose validators that hold the case files against the published schema and say line
// and column. They are installed for the run in a folder that goes afterwards, and each must first find a fault that is put there.
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
const schema = "schemas/case.schema.json";

/** `isSlow`: so slow that it gets a small archive. */
const validators = [
  {
    name: "@sourcemeta/jsonschema 16.11.0 (compiled, C++)",
    packages: ["@sourcemeta/jsonschema@16.11.0"],
    command: ["node_modules/.bin/jsonschema", "validate", schema],
  },
  {
    name: "@jirutka/ajv-cli 6.0.0",
    packages: ["@jirutka/ajv-cli@6.0.0", "ajv@8.20.0", "yaml@2.9.1"],
    command: [
      ...["node_modules/.bin/ajv", "validate", "--errors=line", "--all-errors=true"],
      ...["--strict=false", "-s", schema, "--"],
    ],
  },
  {
    name: "yaml-language-server 1.25.0 (as a library)",
    packages: ["yaml-language-server@1.25.0", "vscode-languageserver-textdocument@1.0.16"],
    command: [process.execPath, join(root, "scripts/bench/language-service.mjs"), schema],
  },
  {
    name: "eslint 10.15.0, eslint-plugin-json-schema-validator 6.3.1",
    packages: [
      ...["eslint@10.15.0", "eslint-plugin-json-schema-validator@6.3.1"],
      "yaml-eslint-parser@2.1.0",
    ],
    command: ["node_modules/.bin/eslint", "--config", "eslint.config.mjs"],
    isSlow: true,
  },
  {
    name: "@stoplight/spectral-cli 6.16.3",
    packages: ["@stoplight/spectral-cli@6.16.3"],
    command: ["node_modules/.bin/spectral", "lint", "--ruleset", "spectral.mjs"],
    isSlow: true,
  },
];

// ESLint takes the schema that the first line of each file names.
const settings = {
  "eslint.config.mjs": `
import plugin from "eslint-plugin-json-schema-validator";
import * as parser from "yaml-eslint-parser";
const rules = { "schema/no-invalid": ["error", { useSchemastoreCatalog: false }] };
export default [{ files: ["**/*.yaml"], plugins: { schema: plugin }, languageOptions: { parser }, rules }];`,
  "spectral.mjs": `
import { readFileSync } from "node:fs";
import { schema } from "@stoplight/spectral-functions";
const functionOptions = { schema: JSON.parse(readFileSync("${schema}", "utf8")), allErrors: true };
export default { rules: { schema: { given: "$", severity: "error", then: { function: schema, functionOptions } } } };`,
};

/** Seconds of wall time and of CPU time, with what the command started itself (many of them only start another program). */
function run(command, cwd) {
  const start = process.hrtime.bigint();
  const { status, output } = spawnSync(
    "sh",
    ["-c", '"$@" 3>&- >/dev/null; status=$?; times >&3; exit $status', "sh", ...command],
    { cwd, stdio: ["ignore", "ignore", "ignore", "pipe"], encoding: "utf8" },
  );
  const wall = Number(process.hrtime.bigint() - start) / 1e9;
  if (status !== 0) throw new Error(`${command.slice(0, 5).join(" ")} … ended with ${status}`);
  const [, children = ""] = output[3].split("\n");
  const [user, system] = [...children.matchAll(/(\d+)m([\d.]+)s/g)].map(
    ([, minutes, seconds]) => 60 * Number(minutes) + Number(seconds),
  );
  return { wall, cpu: user + system };
}

/** Where the validator says that the fault stands; an untouched case must pass. */
function findFault(command, { fault, line, sound }, cwd) {
  const tell = (file) => spawnSync(command[0], [...command.slice(1), file], { cwd, encoding: "utf8" });
  const { status, stdout, stderr } = tell(fault);
  const places = [...`${stdout}${stderr}`.matchAll(/(?:^|:| |line )(\d+)(?::|, column )(\d+)/gm)].map(
    ([, ...place]) => place.join(":"),
  );
  const place = places.find((each) => each.startsWith(`${line}:`));
  if (status === 0 || place === undefined || tell(sound).status !== 0)
    throw new Error(`${command[0]} does not tell the fault on line ${line}: ${stdout}${stderr}`);
  return place;
}

const casesOf = (folder) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /pig-\d+\.yaml$/.test(name))
    .map((name) => join(folder, name));

function install(folder) {
  const { status, stderr } = spawnSync(
    "npm",
    [
      ...["install", "--prefix", folder, "--no-save", "--no-audit", "--no-fund", "--ignore-scripts"],
      ...validators.flatMap(({ packages }) => packages),
    ],
    { cwd: folder, encoding: "utf8" },
  );
  if (status !== 0) throw new Error(`npm install: ${stderr}`);
  for (const [file, text] of Object.entries(settings)) writeFileSync(join(folder, file), text);
}

/** A case that fits the schema, and the same with one word that does not. */
function plantFault(folder, sound) {
  const text = readFileSync(sound, "utf8");
  const [before, after] = text.split("state: fresh", 2);
  const fault = join(folder, "fault/farm/visit/pig-01.yaml");
  mkdirSync(dirname(fault), { recursive: true });
  writeFileSync(fault, `${before}state: fressh${after}`);
  return { fault, line: before.split("\n").length, sound };
}

const lint = (folder, ...more) => [
  ...[process.execPath, join(root, "bin/carcase.js"), "lint", "--quiet", ...more],
  folder,
];

export function compareValidators({ archive, median, runs }) {
  const parent = mkdtempSync(join(tmpdir(), "carcase-validators-"));
  process.env.XDG_CACHE_HOME = join(parent, "cache");
  try {
    cpSync(join(root, "schemas"), join(parent, "schemas"), { recursive: true });
    install(parent);
    const [small, large] = [2, 40].map((farms) => archive(parent, farms));
    const planted = plantFault(parent, casesOf(small)[0]);
    for (const validator of validators) compare(validator.isSlow ? small : large, validator);

    function compare(folder, { name, command }) {
      const cases = casesOf(folder);
      const place = findFault(command, planted, parent);
      console.log(`${name}, ${cases.length} cases (fault on line ${planted.line}: says ${place})`);
      const commands = {
        theirs: [...command, ...cases],
        cold: lint(folder, "--no-cache"),
        again: lint(folder),
        theirOne: [...command, planted.sound],
        ourOne: lint(planted.sound, "--no-cache"),
      };
      // The first run, which is not measured, keeps what the others use.
      run(commands.again, parent);
      const rounds = Array.from({ length: runs }, () =>
        Object.fromEntries(Object.entries(commands).map(([each, what]) => [each, run(what, parent)])),
      );
      const ratio = (each, by) => {
        const ratios = rounds.map((times) => times[each][by] / times.theirs[by]);
        const [middle, least, most] = [median(ratios), Math.min(...ratios), Math.max(...ratios)].map(
          (value) => value.toFixed(2),
        );
        return `${middle} [${least} to ${most}]`;
      };
      for (const [what, each] of [
        ["lint", "cold"],
        ["lint again", "again"],
      ])
        console.log(
          `  ${what.padEnd(12)} ${ratio(each, "cpu")} x its CPU, ${ratio(each, "wall")} x its wall time`,
        );
      for (const [what, every, one] of [
        ["lint", "cold", "ourOne"],
        ["validator", "theirs", "theirOne"],
      ]) {
        const [all, first] = [every, one].map((each) => median(rounds.map((times) => times[each].cpu)));
        const more = (1000 * (all - first)) / (cases.length - 1);
        console.log(
          `  ${what.padEnd(12)} CPU ${all.toFixed(2)} s; one case ${first.toFixed(2)} s, each further one ${more.toFixed(2)} ms`,
        );
      }
    }
  } finally {
    rmSync(parent, { recursive: true });
  }
}
