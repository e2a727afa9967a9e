import { defineConfig } from "vitest/config";

const report = process.env.CARCASE_TEST_REPORT;

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: report === undefined ? ["default"] : ["default", ["json", { outputFile: report }]],
  },
});
