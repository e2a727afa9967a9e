import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";
import { BaseSequencer } from "vitest/node";

const report = process.env.CARCASE_TEST_REPORT;

/** Longest first, so that no worker ends alone; where no earlier run is known, these are. */
const longest = /tests\/(?:lint\/(?:contradictions|mutants|slips|rules)|alarms\/slips)\.test\.ts$/;

class LongestFirst extends BaseSequencer {
  override async sort(files: Parameters<BaseSequencer["sort"]>[0]): ReturnType<BaseSequencer["sort"]> {
    const sorted = await super.sort(files);
    const isLong = ({ moduleId }: (typeof files)[number]): boolean => longest.test(moduleId);
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: ["tests/global-setup.ts"],
    setupFiles: ["tests/setup.ts"],
    // Left to itself, vitest keeps one core free: on two cores it would run one worker.
    maxWorkers: availableParallelism(),
    // No test changes a module, so the files of a worker share what they import.
    isolate: false,
    sequence: { sequencer: LongestFirst },
    testTimeout: 300_000,
    hookTimeout: 300_000,
    reporters: report === undefined ? ["default"] : ["default", ["json", { outputFile: report }]],
  },
});
