/** `carcase plan` as a user types it. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { carcase } from "./run.ts";

const temporary = mkdtempSync(join(tmpdir(), "carcase-plan-"));
afterAll(() => rmSync(temporary, { recursive: true }));
const farm = "cases-example/alder-farm";

describe("plan", () => {
  it.each([
    [["detect", "--herd", "600", "--prevalence", "5%", "--confidence", "95%"], "Examine 56 of the 600 pigs"],
    [
      ["detect", "--herd", "600", "--prevalence", "0.05", "--confidence", "0.95"],
      "Examine 56 of the 600 pigs",
    ],
    [["detect", "--prevalence", "5 %", "--pool", "5"], "pools of 5 pigs each"],
    [["estimate", "--expected", "20%", "--within", "5%"], "Examine 267 pigs"],
    [["compare", "--from", "50%", "--to", "20%"], "Examine 44 pigs on each visit"],
    [
      ["compare", "--from", "40%,20%", "--to", "15%,10%"],
      "Examine 47 pigs of each of the 2 groups on each visit",
    ],
    [
      ["compare", "--from", "80%", "--to", "20%", "--from-each-pen", "3", "--pens", "6", "--seed", "7"],
      "Simulated 2000 times with seed 7",
    ],
    [
      ["compare", "--grades", "40,30,20,10", "--then-grades", "70,20,10", "--pigs", "12", "--over", "12"],
      "Mann & Whitney's test sees it at 5 %",
    ],
    [["say", "--pigs", "12"], "at most 22.1 %"],
    [["say", "--pigs", "12", "--test", "boschloo"], "(Boschloo's exact test at 5 %)"],
    [["choose", "--diagnostic"], "[ ] Take pigs in the first 24 to 48 h"],
  ])("%j", (args, sentence) => {
    const { code, out, err } = carcase(["plan", ...args]);
    expect(out.replaceAll(/\s+/g, " ")).toContain(sentence);
    expect([code, err]).toEqual([0, ""]);
  });

  it("gives the same numbers as JSON, CSV and Markdown", () => {
    const ask = (format: string): string =>
      carcase([
        "plan",
        "detect",
        "--herd",
        "600",
        "--prevalence",
        "5%",
        "--over",
        "5%,10%",
        "--format",
        format,
      ]).out;
    const json = JSON.parse(ask("json"));
    expect(json.answer).toMatchObject({ n: 56, affected: 30 });
    expect(json.table).toHaveLength(2);
    const [head, first] = ask("csv").split("\r\n");
    expect(head).toBe("prevalence,affected,n,probability,cannon_roe");
    expect(first).toBe(`0.05,30,56,${json.answer.probability},56`);
    expect(ask("markdown")).toContain("| 5 % | 30 | 56 | 95.1 % | 56 |");
  });

  it.each([
    [["detect", "--herd", "600"], "--prevalence is missing; write for example --prevalence 5%"],
    [["detect", "--prevalence", "5"], "did you mean 5%? Write 5% or 0.05"],
    [["detect", "--prevalence", "five"], "write 5% or 0.05"],
    [["detect", "--prevalence", "2,5%"], "with a point, not a comma"],
    [["detect", "--prevalence", "0%"], "write a share above 0%"],
    [["detect", "--prevalence", "105%"], "write a share up to 100%"],
    [["detect", "--prevalence", "5%", "--herd", "0"], "write a whole number from 1"],
    [["detect", "--prevalence", "5%", "--confidence", "100%"], "above 0% and below 100%"],
    [["detect", "--prevalence", "5%", "--herd", "10", "--pool", "20"], "cannot be filled from a herd of 10"],
    [["estimate", "--expected", "0%", "--within", "5%"], "above 0% and below 100%"],
    [["detect", "--prevalence", "5%", "--rounding", "up"], "write ceil, round or floor"],
    [["detect", "--prevalence", "5%", "--format", "yaml"], "there are text, json, csv, markdown"],
    [["detect", "--prevalence", "5%", "--herd-specificity", "90%"], "(--specificity 98%)"],
    [["estimate", "--expected", "20%", "--within", "5%", "--correlation", "0.3"], "(--from-each-pen 5)"],
    [["compare", "--from", "40%", "--to", "40%"], "there is no change to see"],
    [["compare", "--from", "40%", "--to", "10%", "--over", "5000"], "whole number from 1 to 1000"],
    [["compare", "--from", "40%"], "(--from 40% --to 15%)"],
    [["compare", "--from", "2,5%", "--to", "10%"], "with a point, not a comma"],
    [["compare", "--from", "40%,20%", "--to", "10%"], "write one for each group"],
    [["compare", "--grades", "40,30,20,1", "--then-grades", "60,40"], "add up to 91, not 100"],
    [
      ["compare", "--grades", "40,thirty", "--then-grades", "60,40"],
      '"thirty" does not fit; write of 100 pigs',
    ],
    [["compare", "--from", "40%", "--to", "10%", "--from-each-pen", "4", "--pens", "4"], "write 5 or more"],
    [["compare", "--from", "40%", "--to", "10%", "--seed", "spring"], "--seed"],
    [["say", "--pigs", "13", "--herd", "12"], "13 pigs cannot be drawn"],
    [["choose", "--pigs", "3"], "name the list to draw from"],
    [["choose", farm], "--pigs is missing"],
    [["choose", farm, "--pigs", "3", "--groups", "nursery"], "there is no group nursery"],
    [["choose", `${farm}/farm.yaml`, "--groups", "finisher-1", "--pens", "900"], "cannot be drawn"],
    [["choose", "nowhere.txt", "--pigs", "3"], "there is no such file"],
    [["choose", "nowhere/farm.yaml", "--pigs", "3"], "no farm file here"],
    [["choose", farm, "--pigs", "3", "--seed", "spring"], "--seed"],
    [["choose", "--diagnostic", "--pigs", "3"], "draws nothing"],
    [["detct"], "Did you mean detect?"],
  ])("%j ends with 2 and says what to write", (args, hint) => {
    const { code, out, err } = carcase(["plan", ...args]);
    expect(err).toContain(hint);
    expect(err).not.toMatch(/\n {4}at |internal fault/);
    expect([code, out]).toEqual([2, ""]);
  });
});

describe("plan choose", () => {
  const tags = Array.from({ length: 40 }, (_, i) => `T${100 + i}`).join("\n");
  const list = join(temporary, "tags.txt");
  writeFileSync(list, tags);

  const drawn = (
    args: readonly string[],
    input = "",
  ): Record<string, unknown> & { table: { tag: string }[] } =>
    JSON.parse(carcase(["plan", "choose", ...args, "--format", "json"], { input }).out);

  it("draws the same pigs from the same list and seed, from a file or from standard input", () => {
    const args = ["--pigs", "6", "--reserve", "2", "--seed", "20260314"];
    const fromFile = drawn([list, ...args]);
    expect(drawn(["-", ...args], `${tags}\r\n\n`)).toEqual(fromFile);
    expect(fromFile.table).toHaveLength(8);
    expect(drawn([list, "--pigs", "6", "--reserve", "2", "--seed", "1"]).table).not.toEqual(fromFile.table);
  });

  it("prints a seed that it made up, so that the draw can be repeated", () => {
    const first = drawn([list, "--pigs", "5"]);
    const { seed } = first.asked as { seed: number };
    expect(drawn([list, "--pigs", "5", "--seed", String(seed)])).toEqual(first);
  });

  it("draws from the groups of a farm, each apart, and pens", () => {
    const { table } = drawn([farm, "--groups", "nursery-1,sows", "--pigs", "3", "--each", "--seed", "7"]);
    expect(table.map(({ tag }) => tag.replace(/ pig \d+$/, ""))).toEqual([
      "nursery-1",
      "nursery-1",
      "nursery-1",
      "sows",
      "sows",
      "sows",
    ]);
    const pens = drawn([farm, "--groups", "finisher-1", "--pens", "4", "--seed", "7"]);
    for (const { tag } of pens.table) expect(tag).toMatch(/^finisher-1 pen ([1-9]|1[0-4])$/);
  });

  it("names the line of a tag that stands there twice, and of one that hides something", () => {
    expect(carcase(["plan", "choose", "-", "--pigs", "1"], { input: "a\nb\na\n" })).toMatchObject({
      code: 2,
      out: "",
    });
    const twice = carcase(["plan", "choose", "-", "--pigs", "1"], { input: "a\nb\na\n" });
    expect(twice.err).toContain("line 3: the tag a stands in line 1 already");
    const hidden = carcase(["plan", "choose", "-", "--pigs", "1"], { input: "a\nb\u001b[31m\n" });
    expect(hidden.err).toContain("line 2");
    expect(hidden.err).not.toContain("\u001b");
    expect(hidden.code).toBe(2);
  });

  it.each(["tag\n1\n2\n", "tag,pen\n1,a\n2,b\n"])("draws no heading as a pig: %j", (input) => {
    const { code, out, err } = carcase(["plan", "choose", "-", "--pigs", "1"], { input });
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(/line 1: "tag.*would be drawn as a/);
  });

  it("writes tags as text: no markup in Markdown, no formula in a table", () => {
    const input = "=1+1\n<b>x</b>|y\n";
    const ask = (format: string): string =>
      carcase(["plan", "choose", "-", "--pigs", "2", "--seed", "1", "--format", format], { input }).out;
    expect(ask("csv")).toContain("'=1+1");
    expect(ask("markdown")).toContain("&lt;b&gt;x&lt;/b&gt;\\|y");
  });

  it("writes into a file and leaves the screen empty", () => {
    const file = join(temporary, "plan.md");
    const args = ["plan", "choose", list, "--pigs", "2", "--seed", "1", "--format", "markdown", "-o", file];
    expect(carcase(args)).toEqual({ code: 0, out: "", err: "" });
    expect(readFileSync(file, "utf8")).toContain("## 2 pigs drawn at random");
  });
});
