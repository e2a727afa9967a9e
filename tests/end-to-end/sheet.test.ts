/** `carcase sheet` writes a page to print, or says in a line why not. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { carcase } from "./run.ts";

const visit = "alder-farm/2026-03-14";

describe("carcase sheet", () => {
  const cwd = temporaryFolder();
  carcase(["new", visit, "--pigs", "2", "--signs", "sneezing", "--healthy", "1", "--age", "58 d"], { cwd });

  it("takes the pigs that carcase new began, a healthy one with the organs of the ill", () => {
    const { code, out, err } = carcase(["sheet", visit, "-o", "sheet.html"], { cwd });
    expect([code, out]).toEqual([0, ""]);
    expect(err).toBe(
      "carcase: sheet.html: 3 pigs on 6 pages; print it from a browser on A4 at 100 %, on both sides\n",
    );
    const html = readFileSync(join(cwd, "sheet.html"), "utf8");
    for (const number of ["01", "02", "03"])
      expect(html).toContain(`<strong>alder-farm-2026-03-14-${number}</strong>`);
    const healthy = html.slice(html.indexOf("<strong>alder-farm-2026-03-14-03</strong>"));
    expect(healthy).toContain("<span>Turbinates (conchae) and nasal septum</span>");
  });

  it("makes the same of pigs that are still to come", () => {
    const args = ["--pigs", "2", "--signs", "sneezing", "--healthy", "1", "--age", "58 d"];
    const toCome = carcase(["sheet", "beech-farm/2026-03-14", ...args], { cwd });
    const begun = carcase(["sheet", visit], { cwd });
    const organs = (html: string): string[] => html.match(/<div class="row(?: half)?">.*/g) ?? [];
    expect(toCome.code).toBe(0);
    expect(organs(toCome.out).length).toBeGreaterThan(50);
    expect(organs(toCome.out)).toEqual(organs(begun.out));
  });

  it("numbers pigs without a visit from one, whatever lies around", () => {
    const { out } = carcase(["sheet", "--pigs", "2", "--language", "de"], { cwd });
    expect(out.match(/<strong>[^<]*/g)).toEqual(
      ["01", "01", "02", "02"].map((number) => `<strong>${number}`),
    );
  });

  it("replaces an earlier sheet and no other page", () => {
    writeFileSync(
      join(cwd, "mine.html"),
      '<!doctype html>\n<html lang="en">\n<meta name="viewport" content="width=device-width">\n',
    );
    const { code, err } = carcase(["sheet", visit, "-o", "mine.html"], { cwd });
    expect(code).toBe(2);
    expect(err).toContain("mine.html: that file is already there and does not look like an earlier result");
    expect(carcase(["sheet", "--pigs", "1", "-o", "sheet.html"], { cwd }).code).toBe(0);
  });

  it("gives the tally as the table that import reads", () => {
    const { out } = carcase(["sheet", "--tally", "--pigs", "3", "--csv"], { cwd });
    expect(out).toBe(carcase(["import", "--empty", "3"], { cwd }).out);
  });

  it("stops each pig of a visit for an alarm of one", () => {
    const stopped = temporaryFolder();
    carcase(["new", visit, "--pigs", "2", "--signs", "sneezing", "--age", "58 d"], { cwd: stopped });
    const file = join(stopped, visit, "pig-02.yaml");
    writeFileSync(file, readFileSync(file, "utf8").replace(/vesicles: /, "vesicles: seen"));
    const { code, out, err } = carcase(["sheet", visit], { cwd: stopped });
    expect(code).toBe(0);
    expect(err).toContain("STOP: this may be a notifiable disease");
    expect(out.match(/<div class="notice"><h2>STOP/g)).toHaveLength(2);
    expect(out).not.toContain('class="row"');
  });

  every(
    "says what is wrong, and writes nothing",
    [
      { args: [], says: "name the folder of a visit or its cases" },
      { args: ["nowhere"], says: 'no case at "nowhere"' },
      { args: [visit, "--paper", "a5"], says: 'there is no paper "a5"; write a4 or letter' },
      { args: [visit, "--language", "xx"], says: 'there is no "xx"; write da, de, en, es or fr' },
      { args: [visit, "--csv"], says: "--csv is the table of a tally; write --tally as well" },
      { args: ["--pigs", "2", "--signs", "snezing"], says: "Did you mean sneezing?" },
      { args: [visit, "other", "--pigs", "2"], says: "pigs to come belong to one visit" },
    ],
    ({ args, says }) => {
      const { code, out, err } = carcase(["sheet", ...args, "-o", "none.html"], { cwd });
      expect([code, out]).toEqual([2, ""]);
      expect(err).toContain(says);
      expect(existsSync(join(cwd, "none.html"))).toBe(false);
    },
    ({ says }) => says,
  );
});
