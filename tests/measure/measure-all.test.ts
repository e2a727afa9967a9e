/** The tracings that cases name. */
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { caseTracings, measureAll, measuredRecord } from "../../src/measure/index.ts";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { svg } from "./drawn.ts";

const folder = temporaryFolder();
const box = (id: string, x: number, size: number): string =>
  `<rect id="${id}" x="${x}" width="${size}" height="${size}"/>`;
put(folder, {
  "pigs/a.yaml": smallCase(
    "a",
    "respiratory: {turbinates: {tracing: ../t/a.svg}, lungs: {tracing: ../t/l.svg}}\n",
  ),
  "pigs/b.yaml": smallCase("b", "respiratory: {turbinates: {tracing: ../t/l.svg}, lungs: normal}\n"),
  "pigs/c.yaml": smallCase("c", "respiratory: {turbinates: {tracing: nowhere.svg}}\n"),
  "pigs/d.yaml": smallCase("d", "respiratory: {turbinates: [{process: exudate}]}\n"),
  "t/a.svg": svg(`${box("cavity-left", 0, 20)}${box("dorsal-left", 2, 6)}${box("ventral-left", 10, 4)}`),
  "t/l.svg": svg(`${box("lobe-accessory", 0, 30)}${box("affected-accessory-1", 1, 10)}`),
});
const { cases } = readCases([join(folder, "pigs")]);
const { measurements, problems } = measureAll([join(folder, "t/a.svg")], cases);

describe("measureAll", () => {
  it("measures named files first, then the tracings of cases from the folder of the case", () => {
    expect(measurements.map(({ owner, tracing }) => [owner?.case, owner?.organ, tracing])).toEqual([
      [undefined, undefined, join(folder, "t/a.svg")],
      ["a", "respiratory.turbinates", "../t/a.svg"],
      ["a", "respiratory.lungs", "../t/l.svg"],
    ]);
    expect(measurements[0]?.sha256).toBe(measurements[1]?.sha256);
  });

  it("says when a tracing shows another organ, or is not there", () => {
    expect(problems.map(({ owner, kind }) => [owner?.case, kind])).toEqual([
      ["b", "other-organ"],
      ["c", "file-unreadable"],
    ]);
  });

  it("knows the tracings of a case without reading them", () => {
    expect(cases.map((one) => caseTracings(one).length)).toEqual([2, 1, 1, 0]);
  });
});

describe("what a case records", () => {
  it("holds rounded figures, and leaves out what has no value", () => {
    const [, snout, lungs] = measurements;
    if (snout === undefined || lungs === undefined) throw new Error("not measured");
    // Cavity 80 mm and 400 mm²; conchae 24 + 16 mm and 36 + 16 mm².
    expect(measuredRecord("../t/a.svg", snout, "respiratory.turbinates")).toEqual({
      tracing: "../t/a.svg",
      sha256: snout.sha256,
      perimeter_ratio: { left: 0.5 },
      concha_area_fraction: { left: 0.13 },
      free_area_percent: { left: 87 },
    });
    expect(measuredRecord("../t/l.svg", lungs, "respiratory.lungs")).toEqual({
      tracing: "../t/l.svg",
      sha256: lungs.sha256,
      affected_percent: { accessory: 11.1 },
    });
  });

  it("fits the format of a case, whatever was measured", () => {
    const [, snout] = measurements;
    if (snout === undefined) throw new Error("not measured");
    const record = JSON.stringify(measuredRecord("../t/a.svg", snout, "respiratory.turbinates"));
    put(folder, {
      "again/a.yaml": smallCase(
        "a",
        `respiratory: {turbinates: {tracing: ../t/a.svg, measured: ${record}}}\n`,
      ),
    });
    expect(readCases([join(folder, "again")]).cases.flatMap(({ faults }) => faults)).toEqual([]);
  });
});
