/** The diff is one that others can apply. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { unifiedDiff } from "../../src/fix/index.ts";
import { runs } from "../random.ts";

const folder = mkdtempSync(join(tmpdir(), "carcase-diff-"));
afterAll(() => rmSync(folder, { recursive: true }));

describe("a unified diff", () => {
  it("shows what changed with three lines around it", () => {
    const lines = ["a", "b", "c", "d", "e", "f", "g", "h"].map((line) => `${line}\n`);
    expect(unifiedDiff("x.yaml", lines.join(""), lines.join("").replace("e", "E"))).toBe(
      "--- a/x.yaml\n+++ b/x.yaml\n@@ -2,7 +2,7 @@\n b\n c\n d\n-e\n+E\n f\n g\n h\n",
    );
  });

  it("of equal texts is empty", () => {
    expect(unifiedDiff("x.yaml", "a\n", "a\n")).toBe("");
  });

  it("turns one text into the other with git apply", () => {
    const text = fc
      .tuple(fc.array(fc.constantFrom("a", "b", "c", "", "d\r"), { maxLength: 30 }), fc.boolean())
      .map(([lines, end]) => lines.join("\n") + (end ? "\n" : ""));
    const nonEmpty = text.filter((one) => one !== "");
    fc.assert(
      fc.property(nonEmpty, nonEmpty, (before, after) => {
        fc.pre(before !== after);
        writeFileSync(join(folder, "x.yaml"), before);
        writeFileSync(join(folder, "x.diff"), unifiedDiff("x.yaml", before, after));
        execFileSync("git", ["apply", "--whitespace=nowarn", "--unidiff-zero", "x.diff"], { cwd: folder });
        expect(readFileSync(join(folder, "x.yaml"), "utf8")).toBe(after);
      }),
      { numRuns: runs(40) },
    );
  });
});
