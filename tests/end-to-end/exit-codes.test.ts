/** The table of exit codes in docs/commands.md. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { carcase, root } from "./run.ts";

const farm = "cases-example/alder-farm";
const incomplete = "cases-example/incomplete/skipped-organ.yaml";
const alarmed = "cases-example/incomplete/stopped";
const unreadable = temporaryFolder();
put(unreadable, {
  "a.yaml": smallCase("a"),
  "b.yaml": "case: b\ncase: b\n",
  "spelling.yaml": smallCase("c", "pig: {sex: Female}\n"),
});

const sealed = temporaryFolder();
put(sealed, {
  "a.yaml": readFileSync(join(root, `${farm}/2026-03-14/pig-14.yaml`), "utf8").replace("24 wk", "25 wk"),
});

const table: readonly (readonly [code: number, call: string])[] = [
  [0, `lint ${farm}/2026-03-14/pig-01.yaml`],
  [0, `compare --between groups ${farm}/2026-03-14`],
  [0, `show ${alarmed}`],
  [0, `samples check ${alarmed}`],
  [1, `lint ${incomplete}`],
  [0, "lint cases-example/incomplete/treated-pig.yaml"],
  [1, "lint --max-warnings 0 cases-example/incomplete/treated-pig.yaml"],
  [1, "lint --fail-on warning cases-example/incomplete/treated-pig.yaml"],
  [1, "lint --fix --dry-run cases-example/incomplete/spelling.yaml"],
  [1, `workup ${alarmed}`],
  [1, `report ${alarmed}`],
  [1, `samples plan ${alarmed}`],
  [1, `samples form ${alarmed}`],
  [1, `samples labels ${alarmed}`],
  [1, `samples parcel ${alarmed}`],
  [0, `verify ${farm}`],
  [1, `verify ${sealed}`],
  [1, "doctor cases-example/incomplete"],
  [2, `lint ${incomplete} ${unreadable}`],
  [2, "lint --format yaml"],
  [2, "lint no-such-folder"],
  [2, "explain no-such-thing"],
  [2, "note pig 1: xyzzy"],
  [2, `score -o no/such/folder/a.txt ${farm}/2026-03-14/pig-01.yaml`],
];

describe("exit codes", () => {
  every(
    "are those of the table",
    table,
    ([code, call]) => {
      const ran = carcase(call.split(" "));
      expect(ran.code, ran.out.slice(0, 500) + ran.err).toBe(code);
    },
    ([, call]) => call,
  );
});
