// Loaded into a process that is measured: at its end it says what it took, on a pipe of its own.
const { writeSync } = require("node:fs");

process.on("exit", () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  writeSync(3, JSON.stringify({ cpu: (userCPUTime + systemCPUTime) / 1e6, memory: maxRSS / 1024 }));
});
