/** `carcase herd` as it is typed: options, refusals, formats. */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { carcase } from "../end-to-end/run.ts";

const farm = "cases-example/alder-farm";
/** A farm of one pig, where what is asked is refused before anything is counted. */
const small = "tests/fixtures/birch-farm";
const one = ["--indicator", "snout-grade-2-up"];

describe("carcase herd", () => {
  it.each([
    [["--interval", "blakr"], "Did you mean blaker?"],
    [["--interval", "wilson"], "There are clopper-pearson and blaker."],
    [["--cluster", "barn"], "There are pen, room and litter."],
    [["--level", "0"], "such as 0.95 or 95%"],
    [["--level", "101%"], "such as 0.95 or 95%"],
    [["--finite", "--cluster", "pen"], '"finite" and "cluster"'],
    [["--finite", "--interval", "blaker"], 'leave out "interval"'],
    [["--sensitivity", "90%", ...one], "--specificity is missing"],
    [["--sensitivity", "90%", "--specificity", "98%"], "name it with --indicator"],
    [
      ["--sensitivity", "90%", "--specificity", "9/10", ...one],
      "both as shares (90%, 98%) or both as counts",
    ],
    [["--sensitivity", "51/50", "--specificity", "9/10", ...one], "a whole number from 0 to 50"],
    [["--sensitivity", "40%", "--specificity", "40%", ...one], "must be above 1"],
    [["--seed", "7"], "--seed is for --bootstrap"],
    [["--plot", "--format", "json"], "leave out --format json"],
  ])("%j ends with 2 and a hint", (args, hint) => {
    const { code, out, err } = carcase(["herd", ...args, small]);
    expect(err).toContain(hint);
    expect(err).not.toMatch(/\n {4}at /);
    expect([code, out]).toEqual([2, ""]);
  });

  it("takes 90% and 0.9 for the same level", () => {
    const said = (level: string) => carcase(["herd", "--format", "json", "--level", level, farm]).out;
    const percent = said("90%");
    expect(percent).toBe(said("0.9"));
    expect(JSON.parse(percent).estimates[0].level).toBe(0.9);
  });

  it("keeps the keys that scripts rely on, whatever is asked", () => {
    const args = ["herd", "--format", "json", "--finite", "--combine", "--bootstrap", ...one, farm];
    const { estimates, scores, combined } = JSON.parse(carcase(args).out);
    const keys =
      "indicator stratum basis examined not_examined affected proportion lower upper level method wording";
    for (const key of keys.split(" "))
      for (const found of [...estimates, ...combined]) expect(found).toHaveProperty(key);
    expect(estimates[0]).toMatchObject({
      method: "hypergeometric",
      population: { head: 248, from: "visit.yaml" },
    });
    expect(scores[0].bootstrap).toMatchObject({ seed: 1 });
  });

  it("takes counts and shares of an eye that errs, 1 for never included", () => {
    const of = (se: string, sp: string) =>
      JSON.parse(
        carcase([
          "herd",
          "--format",
          "json",
          "--by",
          "visit",
          ...one,
          "--sensitivity",
          se,
          "--specificity",
          sp,
          farm,
        ]).out,
      ).estimates[0].true_prevalence;
    expect(of("45/50", "98/100")).toMatchObject({
      method: "lang-reiczigel",
      sensitivity: 0.9,
      specificity: 0.98,
    });
    expect(of("0.7", "1")).toMatchObject({ method: "rogan-gladen", prevalence: 1 });
  });

  it("writes a table to a file, and nothing to the terminal", () => {
    const folder = mkdtempSync(join(tmpdir(), "herd-csv-"));
    const file = join(folder, "herd.csv");
    const { code, out } = carcase(["herd", "--format", "csv", "-o", file, farm]);
    expect([code, out]).toEqual([0, ""]);
    expect(readFileSync(file, "utf8")).toMatch(/^measure,id,.*\r\nproportion,/);
    rmSync(folder, { recursive: true });
  });
});
