/** `carcase lint` and `carcase explain` through the built program: formats, choices of rules, exit codes. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { carcase, root, wide } from "./run.ts";

const incomplete = "cases-example/incomplete";
const treated = `${incomplete}/treated-pig.yaml`;
const few = [treated, `${incomplete}/stopped/alarm-sign.yaml`, `${incomplete}/skipped-organ.yaml`];
const model = readFileSync(join(root, "tests/fixtures/birch-farm/2026-04-20/pig-01.yaml"), "utf8");
const temporary = mkdtempSync(join(tmpdir(), "carcase-options-"));
afterAll(() => rmSync(temporary, { recursive: true }));
const fresh = (name: string): string => mkdtempSync(join(temporary, `${name}-`));

describe("the notice of an open alarm", () => {
  const alarmed = (): string => {
    const file = join(fresh("alarm"), "pig.yaml");
    writeFileSync(file, model.replace("vesicles: none", "vesicles: seen"));
    return file;
  };
  const notice = "STOP: this may be a notifiable disease, and the authority";

  it("stands once, on top of the findings as text", () => {
    const { code, out, err } = carcase(["lint", alarmed()]);
    expect(code).toBe(1);
    expect(out.startsWith(notice)).toBe(true);
    expect(out.split(notice)).toHaveLength(2);
    expect(err).not.toContain("STOP");
  });

  it.each(["json", "sarif", "junit", "github", "gitlab"])("goes to standard error beside %s", (format) => {
    const { out, err } = carcase(["lint", "--format", format, alarmed()]);
    expect(err.split(notice)).toHaveLength(2);
    expect(out).not.toContain(notice);
  });

  it("goes to standard error as well where the text goes to a file", () => {
    const file = alarmed();
    const { out, err } = carcase(["lint", "-o", `${file}.txt`, file]);
    expect(out).toBe("");
    expect(err.split(notice)).toHaveLength(2);
    expect(readFileSync(`${file}.txt`, "utf8").startsWith(notice)).toBe(true);
  });

  it("goes to standard error for other commands", () => {
    const { err } = carcase(["score", alarmed()]);
    expect(err.split(notice)).toHaveLength(2);
  });
});

describe("formats", () => {
  it("in a runner of GitHub it is annotations, unless another is asked for or the result is a file", () => {
    const file = join(fresh("runner"), "lint.txt");
    const lint = (...args: string[]) =>
      carcase(["lint", ...args, "cases-example/incomplete/skipped-organ.yaml"], {
        env: { GITHUB_ACTIONS: "true" },
      });
    expect(lint()).toEqual(
      carcase(["lint", "--format", "github", "cases-example/incomplete/skipped-organ.yaml"]),
    );
    expect(lint().out).toMatch(/^::error file=cases-example/);
    expect(lint("--format", "text").out).toMatch(/^cases-example/);
    lint("-o", file);
    expect(readFileSync(file, "utf8")).toMatch(/^cases-example/);
  });

  it("several of one run: one on the terminal, others in files", () => {
    const folder = fresh("also");
    const { code, out } = carcase([
      "lint",
      "--quiet",
      "--also",
      `sarif=${join(folder, "a.sarif")}`,
      "--also",
      `junit=${join(folder, "a.xml")}`,
      "--also",
      `text=${join(folder, "a=b.txt")}`,
      treated,
    ]);
    expect(code).toBe(0);
    expect(out).toContain("[treated-pig]");
    expect(readFileSync(join(folder, "a=b.txt"), "utf8")).toBe(out);
    expect(JSON.parse(readFileSync(join(folder, "a.sarif"), "utf8")).runs[0].results).toHaveLength(1);
    expect(readFileSync(join(folder, "a.xml"), "utf8")).toContain("<skipped>");
  });

  it.each([["json"], ["sarif"], ["junit"], ["github"], ["gitlab"]])("%s has no colours", (format) => {
    const { out } = carcase(["lint", "--format", format, treated], { env: { FORCE_COLOR: "1" } });
    expect(out).not.toContain("\u001b");
    expect(out).toContain("treated-pig");
  });

  it("a file that cannot be read is in every format, and the exit code is 2", () => {
    const folder = fresh("unreadable");
    writeFileSync(join(folder, "broken.yaml"), "case: x\npig: {\n");
    for (const format of ["json", "sarif", "junit", "github", "gitlab"]) {
      const { code, out } = carcase(["lint", "--format", format, join(folder, "broken.yaml")]);
      expect(code).toBe(2);
      expect(out).toContain("unreadable");
    }
  });

  it("comes out the same where the time is given", () => {
    const args = ["lint", "--format", "junit", ...few];
    const env = { SOURCE_DATE_EPOCH: "0" };
    const { out } = carcase(args, { env });
    expect(out).toContain('timestamp="1970-01-01T00:00:00"');
    expect(carcase(args, { env }).out).toBe(out);
  });

  it.each([
    [["--also", "sarif"], "write FORMAT=FILE"],
    [["--also", "sarf=x"], "formats are text, json, sarif"],
    [["--also", "sarif="], "write FORMAT=FILE"],
    [["--also", "json=x.json", "--also", "sarif=./x.json"], "another result goes to that file"],
    [["-o", "x.json", "--also", "sarif=x.json"], "another result goes to that file"],
    [["--format", "sarff"], 'no format "sarff"'],
  ])("%j ends with 2 and writes nothing", (args, hint) => {
    const cwd = fresh("wrong");
    writeFileSync(join(cwd, "pig.yaml"), model);
    const { code, err } = carcase(["lint", ...args], { cwd });
    expect(err).toContain(hint);
    expect(code).toBe(2);
    expect(readdirSync(cwd)).toEqual(["pig.yaml"]);
  });
});

describe("which rules speak, and how loud", () => {
  it("--rule goes before the settings", () => {
    expect(carcase(["lint", "--rule", "treated-pig=error", treated]).code).toBe(1);
    expect(carcase(["lint", "-q", "--rule", "treated-pig=note", treated]).out).toContain(" note ");
    expect(carcase(["lint", "-q", "--rule", "treated-pig=off", treated]).out).toContain("nothing skipped");
  });

  it("--only asks these rules and the alarms", () => {
    const { out } = carcase(["lint", "--format", "json", "--only", "treated-pig", ...few]);
    const found = new Set(JSON.parse(out).findings.map((one: { rule: string }) => one.rule));
    expect(found.has("treated-pig")).toBe(true);
    expect(found.has("alarm-sign-recorded")).toBe(true);
    expect(found.has("skipped-organ")).toBe(false);
  });

  it("--only may be given again", () => {
    const args = ["lint", "--format", "json", "--only", "treated-pig", "--only", "skipped-organ", ...few];
    const found = new Set(JSON.parse(carcase(args).out).findings.map((one: { rule: string }) => one.rule));
    expect([...found]).toEqual(expect.arrayContaining(["treated-pig", "skipped-organ"]));
  });

  it("--only says what was asked, and that errors of the format are not shown", () => {
    const cwd = fresh("only");
    writeFileSync(join(cwd, "pig.yaml"), model.replace("sex: female", "sex: femail"));
    const { code, out } = carcase(["lint", "-q", "--only", "treated-pig", "."], { cwd, env: wide });
    expect({ code, out }).toEqual({
      code: 0,
      out: "1 case: nothing found; only treated-pig and the alarms were asked; 1 error of the format is not shown, so not every value was read: leave out --only\n",
    });
    const args = ["lint", "--format", "json", "--only", "treated-pig", "."];
    expect(JSON.parse(carcase(args, { cwd }).out).summary.format_errors_not_shown).toBe(1);
    const format = carcase(["lint", "-q", "--only", "treated-pig,case-format", "."], { cwd });
    expect(format.code).toBe(1);
    expect(format.out).toContain("[case-format]");
    expect(format.out).not.toContain("not shown");
  });

  it("--max-warnings fails with more warnings than that", () => {
    expect(carcase(["lint", "--max-warnings", "1", treated])).toMatchObject({ code: 0, err: "" });
    const { code, err } = carcase(["lint", "--max-warnings", "0", treated]);
    expect(code).toBe(1);
    expect(err).toBe("carcase: 1 warning, and --max-warnings allows none.\n");
  });

  it("a baseline does not shrink in a run of some rules", () => {
    const cwd = fresh("baseline");
    writeFileSync(
      join(cwd, "pig.yaml"),
      model.replace("treated: no", "treated: {with: amoxicillin, last: 12 h}"),
    );
    carcase(["lint", "--write-baseline", "known.json"], { cwd });
    const before = readFileSync(join(cwd, "known.json"), "utf8");
    expect(before).toContain("treated-pig");
    for (const args of [
      ["--only", "skipped-organ"],
      ["--rule", "treated-pig=off"],
    ])
      carcase(["lint", "--baseline", "known.json", ...args], { cwd, env: { CI: "" } });
    expect(readFileSync(join(cwd, "known.json"), "utf8")).toBe(before);
  });

  it.each([
    [["--only", "skiped-organ"], "Did you mean skipped-organ?"],
    [["--only", ","], "names no rule"],
    [["--rule", "treated-pgi=note"], "Did you mean treated-pig?"],
    [["--rule", "treated-pig=eror"], "Did you mean error?"],
    [["--rule", "treated-pig"], "write rule=level"],
    [["--rule", "alarm-sign-recorded=note"], "guards the alarms or the format"],
    [["--max-warnings", "few"], "not a whole number"],
    [["--max-warnings", "-1"], "not a whole number"],
  ])("%j ends with 2 and a hint", (args, hint) => {
    const { code, err, out } = carcase(["lint", ...args, treated]);
    expect(err).toContain(hint);
    expect({ code, out }).toEqual({ code: 2, out: "" });
  });
});

describe("explain", () => {
  it("prints text or JSON, lists names, and answers unknown ones with the nearest", () => {
    expect(carcase(["explain", "maff-1978"])).toMatchObject({ code: 0, err: "" });
    const { explanations } = JSON.parse(carcase(["explain", "--format", "json", "lungs"]).out);
    expect(explanations[0]).toMatchObject({ kind: "organ", name: "respiratory.lungs" });
    expect(carcase(["explain", "rules"]).out).toContain("skipped-organ");
    const { code, err, out } = carcase(["explain", "skiped-organ"]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/Did you mean skipped-organ(?:,| or |\?)/);
  });
});
