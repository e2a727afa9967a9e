/** Writes an example of an alarm pattern as real files and reads them with the real reader. */
import { stringify } from "yaml";
import { type Archive, readCases } from "../../src/cases/index.ts";
import { folderInTurns } from "../cases/temporary.ts";
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

const farm = stringify({ format: 1, farm: "hazel-farm", groups: { "nursery-2": { head: 240 } } });
const inTurns = folderInTurns();

export function readAlarmFiles({ settings = {}, visit = {}, cases }: AlarmFiles): Archive {
  const files: Record<string, string> = {
    "carcase.yaml": stringify(lay({ format: 1 }, settings)),
    "farm.yaml": farm,
    "2026-04-20/visit.yaml": stringify(lay(plainVisit, visit)),
  };
  for (const [index, one] of cases.entries())
    files[`2026-04-20/pig-0${index + 1}.yaml`] = stringify(
      lay({ ...plainCase, case: `hazel-2026-04-20-0${index + 1}` }, one),
    );
  return readCases([inTurns(files)]);
}
