// Whether what was made still follows from its sources. Told by digests of content and never by times: a checkout, a copy
// and a wrong clock all change times. Uses nothing but Node itself, because setup asks before anything is installed.
import { createHash } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
// Goes with the packages: others may make something else of the same sources.
const kept = join(root, "node_modules/.cache/carcase-made.json");

const stages = {
  generate: {
    from: ["package-lock.json", "scripts", "src/knowledge", "src/lint/rules", "src/schemas"],
    makes: [
      "schemas",
      "src/generated",
      "src/lint/rules/index.ts",
      "src/schemas/organs.schema.json",
      "src/schemas/vocabulary.schema.json",
    ],
    leaves: ["schemas/output"],
  },
  build: {
    from: [
      "bin",
      "package.json",
      "package-lock.json",
      "scripts",
      "src",
      "tsconfig.json",
      "tsconfig.build.json",
    ],
    makes: ["dist", "schemas/output"],
  },
};

/** Whether a stage was made, whole, from what is there now, and nobody has touched what it made. */
export function isMade(stage) {
  const { from, made } = read()[stage] ?? {};
  return from !== undefined && from === sourcesOf(stage) && made === madeBy(stage);
}

/**
 * To be called before the work of a stage, so that what is saved meanwhile counts as changed.
 * @returns what to call after it
 */
export function making(stage) {
  const from = sourcesOf(stage);
  return () => {
    const all = { ...read(), [stage]: { from, made: madeBy(stage) } };
    mkdirSync(dirname(kept), { recursive: true });
    const next = `${kept}.${process.pid}`;
    writeFileSync(next, JSON.stringify(all));
    renameSync(next, kept);
  };
}

function read() {
  try {
    return JSON.parse(readFileSync(kept, "utf8"));
  } catch {
    return {};
  }
}

/** Everything that a stage is made from, in one word. */
export function sourcesOf(stage) {
  const { from, makes } = stages[stage];
  return `Node ${process.version} ${digest(from, (path) => makes.includes(path))}`;
}

/** What V8 kept is refused where it does not fit, so it need not be looked at. */
function madeBy(stage) {
  const { makes, leaves = [] } = stages[stage];
  return digest(makes, (path) => path.endsWith(".kept") || leaves.includes(path));
}

/** One digest over the names and contents of all files in these places. */
function digest(places, leftOut) {
  const hash = createHash("sha256");
  const add = (path) => {
    const file = join(root, path);
    if (leftOut(path) || !existsSync(file)) return;
    if (statSync(file).isDirectory()) for (const name of readdirSync(file).sort()) add(`${path}/${name}`);
    else hash.update(`${path}\0${createHash("sha256").update(readFileSync(file)).digest("hex")}\n`);
  };
  for (const place of places) add(place);
  return hash.digest("hex");
}
