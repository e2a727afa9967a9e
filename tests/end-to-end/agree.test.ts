/** `carcase agree` as a user runs it: a table, cases, and what goes wrong. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { carcase } from "./run.ts";

let folder = "";
const grades: [number, number][] = [
  [0, 0],
  [0, 1],
  [1, 1],
  [1, 2],
  [2, 2],
  [2, 2],
  [3, 4],
  [3, 3],
  [4, 4],
  [5, 5],
];

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "carcase-agree-"));
  const lines = grades.flatMap(([a, b], pig) => [`${pig},A. Marlow,${a}`, `${pig},B. Wren,${b}`]);
  writeFileSync(join(folder, "readings.csv"), `pig,reader,maff-1978\n${lines.join("\n")}\n`);
  writeFileSync(join(folder, "latin.csv"), Buffer.from("pig,reader,maff-1978\n1,J\xe4ger,2\n", "latin1"));
  for (const [pig, [a, b]] of grades.entries())
    writeFileSync(
      join(folder, `pig-${pig}.yaml`),
      `format: 1\ncase: alder-${pig}\nexaminer: A. Marlow\nrespiratory:\n  turbinates: {section: premolar-1, grades: {maff-1978: ${a}}}\nreadings:\n  - {reader: B. Wren, grades: {maff-1978: ${b}}}\n`,
    );
});
afterAll(() => rmSync(folder, { recursive: true }));

describe("carcase agree", () => {
  it("gives the same from a table and from cases", () => {
    const table = carcase(["agree", "--format", "json", "readings.csv"], { cwd: folder });
    const cases = carcase(["agree", "--format", "json", "."], { cwd: folder });
    expect([table.code, cases.code]).toEqual([0, 0]);
    expect(JSON.parse(cases.out)).toEqual(JSON.parse(table.out));
    const [pair] = JSON.parse(table.out).scales[0].pairs;
    expect(pair).toMatchObject({
      first: "A. Marlow",
      second: "B. Wren",
      pigs: 10,
      same: { proportion: 0.7 },
    });
    // Marginals 2 2 2 2 1 1 and 1 2 3 1 2 1: expected (2 + 4 + 6 + 2 + 2 + 1) / 100.
    expect(pair.kappa.unweighted.value).toBeCloseTo((0.7 - 0.17) / (1 - 0.17), 12);
    expect(pair.difference).toMatchObject({ second_higher: 3, first_higher: 0, equal: 7 });
    expect(pair.difference.p).toBeCloseTo(0.25, 12);
  });

  it("prints text, CSV, another level, and into a file", () => {
    const text = carcase(["agree", "readings.csv", "--level", "90%"], { cwd: folder });
    expect(text.code).toBe(0);
    expect(text.out).toContain("90 % interval");
    const csv = carcase(["agree", "readings.csv", "--format", "csv", "-o", "out.csv"], { cwd: folder });
    expect([csv.code, csv.out]).toEqual([0, ""]);
  });

  it("counts a pig once, however often its file was copied, and says so", () => {
    const copies = mkdtempSync(join(tmpdir(), "carcase-agree-"));
    try {
      for (const name of ["pig.yaml", "pig copy.yaml"])
        writeFileSync(
          join(copies, name),
          "format: 1\ncase: alder-1\nexaminer: A. Marlow\nrespiratory:\n  turbinates: {section: premolar-1, grades: {maff-1978: 3}}\nreadings:\n  - {reader: B. Wren, grades: {maff-1978: 2}}\n",
        );
      const { code, err, out } = carcase(["agree", "--format", "json", "."], { cwd: copies });
      expect(code).toBe(2);
      expect(err).toContain('"alder-1" is already the case of');
      expect(JSON.parse(out).scales[0].pairs[0].pigs).toBe(1);
    } finally {
      rmSync(copies, { recursive: true });
    }
  });

  it.each([
    [["readings.csv", "--format", "xml"], 'there is no format "xml"; there are text, json, csv'],
    [["absent.csv"], '"absent.csv" cannot be read: there is no such file'],
    [["latin.csv"], '"latin.csv" is no UTF-8 text; save the table as CSV UTF-8'],
    [["readings.csv", "--scale", "dottori-2007"], '--scale: there is no reading on a scale "dottori-2007"'],
    [["readings.csv", "--scale", "dottori-2007"], "there are readings on maff-1978"],
    [["readings.csv", "--scale", ""], '--scale: there is no name in ""'],
    [["readings.csv", "--level", "95"], "--level:"],
    [["pig-1.yaml", "readings.csv", "readings.csv"], "twice on maff-1978"],
  ])("%j ends with 2 and a message", (args, message) => {
    const { code, err, out } = carcase(["agree", ...args], { cwd: folder });
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(message);
    expect(err).not.toContain("internal fault");
  });
});
