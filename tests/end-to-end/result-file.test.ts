/** A result never replaces a record, a tracing or a photograph. */
import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { carcase, root } from "./run.ts";

describe("a file for results", () => {
  it.each(["visit.yaml", "pig-01.yaml", "snout.svg", "lung.geojson", "photo.JPG"])("is not %s", (name) => {
    const folder = join(temporaryFolder(), "2026-03-14");
    mkdirSync(folder, { recursive: true });
    cpSync(join(root, "cases-example/alder-farm/2026-03-14"), folder, { recursive: true });
    const file = join(folder, name);
    if (!name.endsWith(".yaml")) writeFileSync(file, "drawn by hand");
    const before = readFileSync(file, "utf8");
    for (const args of [
      ["lint", "-o", file, folder],
      ["lint", "--also", `sarif=${file}`, folder],
      ["score", "-o", file, folder],
    ]) {
      const { code, err } = carcase(args);
      expect([code, err]).toEqual([2, expect.stringContaining("nothing was written")]);
      expect(readFileSync(file, "utf8")).toBe(before);
    }
  });

  it("may be an earlier result", () => {
    const file = join(temporaryFolder(), "result.json");
    const args = ["lint", "--format", "json", "-o", file, "cases-example/alder-farm"];
    expect(carcase(args).code).toBe(0);
    const first = readFileSync(file, "utf8");
    expect(carcase(args).code).toBe(0);
    expect(readFileSync(file, "utf8")).toBe(first);
  });
});
