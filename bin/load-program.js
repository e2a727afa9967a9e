// Loads the built program with what V8 kept of compiling it at build time (docs/performance.md has the figures). Another
// Node than the one that built refuses what was kept, and then simply compiles.
const { existsSync, readFileSync } = require("node:fs");
const { createRequire } = require("node:module");
const { join } = require("node:path");
const { Script } = require("node:vm");

const root = join(__dirname, "..");
const program = join(root, "dist", "program");

/**
 * Runs a piece of the built program.
 *
 * @param {string} [piece] its name in `dist/program`
 * @param {(file: string, script: Script) => void} [compiled] told of every file that had to be compiled anew
 */
function loadProgram(piece = "main.cjs", compiled = () => {}) {
  const loaded = new Map();
  const ofNode = createRequire(join(program, "main.cjs"));
  const load = (name) => (name.startsWith("./") ? ofProgram(name.slice(2)) : ofNode(name));

  function ofProgram(name) {
    const before = loaded.get(name);
    if (before !== undefined) return before.exports;
    const file = join(program, name);
    const module = { exports: {} };
    loaded.set(name, module);
    const cachedData = keptBeside(file);
    const script = new Script(
      `(function (exports, require, module, __filename) {${readFileSync(file, "utf8")}\n})`,
      {
        filename: file,
        cachedData,
      },
    );
    if (cachedData === undefined || script.cachedDataRejected) compiled(file, script);
    script.runInThisContext()(module.exports, load, module, file);
    return module.exports;
  }
  ofProgram(piece);
}

/** What `scripts/build` kept of a file; undefined when it kept nothing, as in a published package. */
function keptBeside(file) {
  try {
    return readFileSync(`${file}.kept`);
  } catch {
    return undefined;
  }
}

/** Why the program cannot be run here, and what to do; undefined when it can. */
function missing() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major < 20 || (major === 20 && minor < 19))
    return `carcase needs Node 20.19 or later; this is Node ${process.versions.node}. Get a newer one: https://nodejs.org`;
  if (existsSync(join(program, "main.cjs"))) return undefined;
  const folder = JSON.stringify(root);
  return existsSync(join(root, "scripts", "setup.mjs"))
    ? `carcase is not built yet. Run this once: npm --prefix ${folder} run setup`
    : `carcase is not whole in ${folder}. Install it anew from a packed file, as docs/install.md says.`;
}

module.exports = { loadProgram, missing };
