/** Which settings hold, and that none do with --no-config. */
import { describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { carcase } from "./run.ts";

const settings =
  "format: 1\nlevel: 0.9\nrules:\n  signs-missing: off\n  treated-pig: note\nexclude: [drafts/]\n";

function archive(): string {
  const cwd = temporaryFolder();
  put(cwd, { "carcase.yaml": settings, "v/a.yaml": smallCase("a"), "v/drafts/b.yaml": smallCase("b") });
  return cwd;
}
const shown = (cwd: string, ...args: string[]) =>
  JSON.parse(carcase(["config", "--format", "json", ...args], { cwd }).out);

describe("carcase config", () => {
  it("tells each value with its line, and what is left as it is", () => {
    const { of, file, settings: all, not_set } = shown(archive(), "v/a.yaml");
    expect({ of, file }).toEqual({ of: "v/a.yaml", file: "carcase.yaml" });
    expect(all).toEqual([
      { setting: "rules.signs-missing", value: "off", line: 4 },
      { setting: "rules.treated-pig", value: "note", line: 5 },
      { setting: "exclude", value: ["drafts/"], line: 6 },
      { setting: "level", value: 0.9, line: 2 },
      { setting: "protocol", value: "full", line: null },
      { setting: "scales", value: ["shipped"], line: null },
      { setting: "shares_test", value: "fisher", line: null },
    ]);
    expect(not_set).not.toContain("rules");
    expect(not_set).toContain("authority");
  });

  it("tells what the program does without settings", () => {
    const { file, settings: all } = shown(archive(), "--no-config");
    expect(file).toBeNull();
    expect(all.map(({ line }: { line: number | null }) => line)).toEqual([null, null, null, null]);
  });

  it("tells of variables only those that are set", () => {
    const { out } = carcase(["config"], { cwd: archive(), env: { NO_COLOR: "1", COLUMNS: "100" } });
    expect(out).toMatch(/^ {2}NO_COLOR +1 +no colours/m);
    expect(out).toMatch(/^ {2}COLUMNS +100 /m);
    expect(out).not.toContain("FORCE_COLOR");
  });

  it("says what is wrong with a file that cannot be used, and shows nothing", () => {
    const cwd = temporaryFolder();
    put(cwd, { "carcase.yaml": "format: 1\nlevel: 95\n" });
    const { code, out, err } = carcase(["config"], { cwd });
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/^carcase\.yaml:2:8: /);
    expect(carcase(["config", "gone"], { cwd })).toMatchObject({ code: 2, out: "" });
  });
});

describe("--no-config", () => {
  it("takes the program's own values: levels, limits, and no file is left out", () => {
    const cwd = archive();
    const level = (...args: string[]) =>
      JSON.parse(carcase(["herd", "v", "--format", "json", ...args], { cwd }).out).estimates[0].level;
    expect([level(), level("--no-config")]).toEqual([0.9, 0.95]);
    const cases = (...args: string[]) =>
      JSON.parse(carcase(["lint", "v", "--format", "json", ...args], { cwd }).out).summary.cases;
    expect([cases(), cases("--no-config")]).toEqual([1, 2]);
  });
});
