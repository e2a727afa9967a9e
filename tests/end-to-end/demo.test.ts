/** What a newcomer is shown. */
import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { displayWidth } from "../../src/formats/page/width.ts";
import { root } from "./run.ts";

describe("the demo", () => {
  const { NO_COLOR: _no, FORCE_COLOR: _force, COLUMNS: _width, ...env } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, ["scripts/demo/show.mjs"], {
    cwd: root,
    env,
    encoding: "utf8",
  });
  const lines = stdout.trimEnd().split("\n");

  it("runs five commands as a user types them, each with its answer", () => {
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    const typed = lines.filter((line) => line.startsWith("$ carcase ")).map((line) => line.split(" ")[2]);
    expect(typed).toEqual(["lint", "score", "herd", "compare", "workup"]);
    for (const answer of [
      "tonsil is blank",
      "maff-1978",
      "===O===",
      "No\nchange was shown",
      "1. Enzootic pneumonia",
    ])
      expect(stdout).toContain(answer);
  });

  it("takes at most 80 lines of 80 columns", () => {
    // npm prints four lines before it.
    expect(lines.length).toBeLessThanOrEqual(76);
    expect(lines.filter((line) => displayWidth(line) > 80)).toEqual([]);
  });
});
