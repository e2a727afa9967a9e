// Runs the program once and writes what V8 compiled beside each file that had nothing beside it yet.
const { writeFileSync } = require("node:fs");
const { loadProgram } = require("../../bin/load-program");

const scripts = [];
loadProgram("main.cjs", (file, script) => scripts.push([file, script]));
process.on("exit", () => {
  for (const [file, script] of scripts) writeFileSync(`${file}.kept`, script.createCachedData());
});
