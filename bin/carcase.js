#!/usr/bin/env node
const { loadProgram, missing } = require("./load-program");

const lack = missing();
if (lack === undefined) loadProgram();
else {
  process.stderr.write(`${lack}\n`);
  process.exitCode = 2;
}
