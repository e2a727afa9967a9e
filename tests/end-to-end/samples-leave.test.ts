/** `carcase samples labels, parcel, form`: nothing leaves while an alarm stands, and mistakes are told by file and line. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { carcase, wide } from "./run.ts";

const calm = "vesicles: none, skin_haemorrhage: none, throat_swelling: none, bloody_orifices: none";
const pig = (number: string, more = ""): string => `format: 1
case: elm-${number}
pig: {tag: "${number}", age: 58 d}
selection: {basis: clinical, signs: [cough]}
opened: {at: 2026-05-12T09:35}
alarm_check:
  before_knife: {${calm}}
samples:
  - {id: ${number}-A, from: respiratory.lungs, into: formalin, for: [histology], at: 2026-05-12T10:00}
  - {id: ${number}-B, from: respiratory.lungs, into: chilled, for: [pcr], at: 2026-05-12T10:01}
${more}`;

describe("samples that leave", () => {
  const cwd = temporaryFolder();
  const put = (name: string, text: string): void => writeFileSync(join(cwd, name), text);
  beforeEach(() => {
    put("visit.yaml", "format: 1\nvisit: elm\ndate: 2026-05-12\ncases: [elm-01, elm-02]\n");
    put("carcase.yaml", "format: 1\n");
    put("01.yaml", pig("01"));
    put("02.yaml", pig("02"));
  });
  const samples = (...args: string[]) => carcase(["samples", ...args], { cwd, env: wide });

  it.each(["labels", "parcel", "form"])(
    "%s shows the notice of an alarm and nothing else, until the authority lets go",
    (command) => {
      expect(samples(command).code).toBe(0);
      put("02.yaml", pig("02").replace("vesicles: none", "vesicles: seen"));
      // The pig beside it is stopped as well.
      for (const paths of [[], ["01.yaml"]]) {
        const { code, out, err } = samples(command, ...paths, "-o", "out.html");
        expect([code, out]).toEqual([1, ""]);
        expect(err).toMatch(/^STOP: this may be a notifiable disease/);
        expect(err).not.toContain("out.html");
        expect(existsSync(join(cwd, "out.html"))).toBe(false);
      }
      const entry = (stands: string): string =>
        pig(
          "02",
          `authority: [{at: 2026-05-12T18:00, reached: "M. Oak, duty veterinarian", stands: ${stands}, for: [vesicles], sample: PCR of vesicle epithelium, ground: negative}]\n`,
        ).replace("vesicles: none", "vesicles: seen");
      put("02.yaml", entry("reported"));
      expect(samples(command).code).toBe(1);
      put("02.yaml", entry("excluded"));
      expect(samples(command).out).toContain("02-A");
    },
  );

  it("labels refuses a number that two containers have, with file and line, and prints none", () => {
    put("02.yaml", pig("02").replace("02-B", "01-A"));
    const { code, out, err } = samples("labels");
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain("02.yaml:10:10: not used: 01-A is the number of another container of this visit");
  });

  it("labels refuses a number whose code does not fit the label", () => {
    const long = `02-${"x".repeat(90)}`;
    put("02.yaml", pig("02").replace("02-B", long));
    const { code, err } = samples("labels", "--sheet", "a4-65", "--code", "qr");
    expect(code).toBe(2);
    expect(err).toContain(`02.yaml:10:10: not used: ${long} does not fit a label of 38.1 by 21.2 mm: its`);
    expect(samples("labels", "--sheet", "letter-10").code).toBe(0);
  });

  it("labels takes a sheet of the settings, and says what is wrong with its measures", () => {
    const ours = (columns: number): string =>
      `format: 1\nlabel_sheets:\n  ours: {title: ours, paper: a4, columns: ${columns}, rows: 12, width: 45.7, height: 21.2, across: 48.3}\n`;
    put("carcase.yaml", ours(4));
    const { out } = samples("labels", "--sheet", "ours", "--copies", "2", "--start", "48");
    expect(out.match(/class="label"/g)).toHaveLength(8);
    expect(out.match(/class="sheet"/g)).toHaveLength(2);
    expect(samples("labels", "--sheet", "ours", "--start", "49").err).toContain(
      "write a whole number from 1 to 48",
    );
    put("carcase.yaml", ours(5));
    expect(samples("labels", "--sheet", "ours").err).toContain(
      "carcase.yaml:3:43: not read: label_sheets.ours.columns: 5 labels across reach to 238.9 mm, and the paper is 210 mm wide. Measure the sheet again, in mm.",
    );
    put("carcase.yaml", "format: 1\n");
    expect(samples("labels", "--sheet", "a4-25").err).toContain("Did you mean a4-24?");
  });

  it("labels writes a picture a sheet", () => {
    const { code, err } = samples("labels", "--format", "svg", "--copies", "13");
    expect([code, err]).toEqual([
      2,
      "carcase: a picture is one sheet, and these labels fill 3: write -o labels.svg, and each sheet gets a file of its own\n",
    ]);
    expect(samples("labels", "--format", "svg", "--copies", "13", "-o", "labels.svg").err).toBe(
      "carcase: labels.svg: 52 labels on 3 sheets (A4, 3 by 8 labels of 70 by 36 mm); print at 100 %, without margins\n",
    );
    for (const file of ["labels.svg", "labels-2.svg", "labels-3.svg"])
      expect(readFileSync(join(cwd, file), "utf8")).toMatch(/^<svg xmlns=[\s\S]*<\/svg>\n$/);
    put("labels-2.svg", "<svg>mine, and nothing that was made here</svg>\n");
    expect(samples("labels", "--format", "svg", "--copies", "13", "-o", "labels.svg").code).toBe(2);
    expect(readFileSync(join(cwd, "labels-2.svg"), "utf8")).toContain("mine");
  });

  it("parcel ends with 1 where a recorded parcel has an error, and proposes one where none is recorded", () => {
    const proposed = samples("parcel");
    expect(proposed.code).toBe(0);
    expect(proposed.out).toContain("no parcel recorded; the samples could go as 1 parcel");
    expect(proposed.out).toContain("samples: [01-A, 01-B, 02-A, 02-B]");
    put(
      "visit.yaml",
      "format: 1\nvisit: elm\ndate: 2026-05-12\ncases: [elm-01, elm-02]\nparcels:\n  - {samples: [01-A], by: road, category: B, mark: no}\n",
    );
    const { code, out } = samples("parcel");
    expect(code).toBe(1);
    expect(out).toContain("[parcel-mark-missing]");
  });
});
