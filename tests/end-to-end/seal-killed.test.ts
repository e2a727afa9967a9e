/** A run that signs off and is killed leaves each record unsigned or signed, and the next run ends it. */
import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { runs } from "../random.ts";
import { isEqual, killed, measured, moments, type Program, tree } from "./kill.ts";
import { carcase, root } from "./run.ts";

const env = { SOURCE_DATE_EPOCH: "1773500000" };
const program: Program = { file: join(root, "bin/carcase.js"), env };
const seal = ["seal", "a", "--by", "A. Berg"];
const amend = [...seal, "--amend", "--because", "scale read anew"];

/** 250 of them with those of migrate in a long search. */
const kills = runs(13) > 100 ? 126 : 10;

const unsigned = {
  "a/visit.yaml": "format: 1\nvisit: a\ndate: 2026-03-14\n",
  ...Object.fromEntries(
    [1, 2, 3, 4].map((number) => [
      `a/pig-0${number}.yaml`,
      smallCase(`a-0${number}`, "pig: {weight: 17 kg}\n"),
    ]),
  ),
};

describe(`a run that signs and is killed, ${kills} times`, () => {
  it.each<[string, string[], (signed: Record<string, string>) => Record<string, string>]>([
    ["carcase seal", seal, () => unsigned],
    [
      "carcase seal --amend",
      amend,
      (signed) =>
        Object.fromEntries(
          Object.entries(signed).map(([name, text]) => [name, text.replace("17 kg", "18 kg")]),
        ),
    ],
  ])("%s: every record is old or new", { timeout: 3_600_000 }, async (_, args, start) => {
    const first = temporaryFolder();
    put(first, unsigned);
    carcase(seal, { cwd: first, env });
    const old = start(tree(first));
    put(first, old);
    const whole = await measured(args, first, program);
    const young = tree(first);
    expect(Object.values(young).filter((text) => text.includes("seals:")).length).toBeGreaterThan(3);
    expect(isEqual(old, young)).toBe(false);
    for (const moment of moments(kills / 2, whole)) {
      const folder = temporaryFolder();
      put(folder, old);
      await killed(args, folder, moment, program);
      const told = JSON.stringify(moment);
      for (const [name, text] of Object.entries(tree(folder)))
        expect([old[name], young[name]], `${name}: ${told}`).toContain(text);
      expect(carcase(args, { cwd: folder, env }).code, told).toBe(0);
      expect(isEqual(tree(folder), young), told).toBe(true);
      expect(
        readdirSync(join(folder, "a")).filter((name) => name.endsWith(".tmp")),
        told,
      ).toEqual([]);
      rmSync(folder, { recursive: true });
    }
  });
});
