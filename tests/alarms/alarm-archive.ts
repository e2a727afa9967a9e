/** Writes an example of an alarm pattern as real files and reads them with the real reader. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { stringify } from "yaml";
import { type Archive, readCases } from "../../src/cases/index.ts";
import { lay } from "../lint/lay-example.ts";

export interface AlarmFiles {
  readonly settings?: object;
  readonly visit?: object;
  readonly cases: readonly object[];
}

const plainVisit = { format: 1, visit: "hazel-2026-04-20", date: "2026-04-20" };
const plainCase = {
  format: 1,
  pig: { age: "58 d", sex: "female", group: "nursery-2" },
  death: { manner: "euthanised", at: "2026-04-20T09:10" },
  opened: { at: "2026-04-20T09:40" },
};

export function readAlarmFiles({ settings = {}, visit = {}, cases }: AlarmFiles): Archive {
  const folder = mkdtempSync(join(tmpdir(), "carcase-alarm-"));
  try {
    const day = join(folder, "2026-04-20");
    mkdirSync(day);
    const write = (name: string, value: unknown): void => writeFileSync(join(folder, name), stringify(value));
    write("carcase.yaml", lay({ format: 1 }, settings));
    write("farm.yaml", { format: 1, farm: "hazel-farm", groups: { "nursery-2": { head: 240 } } });
    write("2026-04-20/visit.yaml", lay(plainVisit, visit));
    for (const [index, one] of cases.entries())
      write(
        `2026-04-20/pig-0${index + 1}.yaml`,
        lay({ ...plainCase, case: `hazel-2026-04-20-0${index + 1}` }, one),
      );
    return readCases([folder]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
