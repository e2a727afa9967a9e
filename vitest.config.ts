import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

const report = process.env.CARCASE_TEST_REPORT;

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: ["tests/global-setup.ts"],
    setupFiles: ["tests/setup.ts"],
    // Left to itself, vitest keeps one core free: on two cores it would run one worker.
    maxWorkers: availableParallelism(),
    // No test changes a module, so the files of a worker share what they import.
    isolate: false,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: report === undefined ? ["default"] : ["default", ["json", { outputFile: report }]],
  },
});
