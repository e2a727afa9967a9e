/** What the commands of samples say while an alarm stands, and of what they cannot use. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { carcase, wide } from "../end-to-end/run.ts";

let folder = "";
const visit = (): string => join(folder, "nervous");
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "carcase-samples-"));
  cpSync("tests/fixtures/samples", folder, { recursive: true });
  const pig = join(visit(), "pig-01.yaml");
  writeFileSync(pig, readFileSync(pig, "utf8").replace("{vesicles: none", "{vesicles: seen"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const asked = (...args: string[]) => carcase(["samples", ...args], { env: wide });

describe("while an alarm stands", () => {
  it.each(["text", "json", "csv", "markdown"])(
    "plan prints the notice and nothing else, as %s too",
    (format) => {
      const { code, out, err } = asked("plan", "--format", format, visit());
      expect([code, out]).toEqual([1, ""]);
      expect(err).toContain("STOP: this may be a notifiable disease");
      expect(err).toContain("District Veterinary Office");
    },
  );

  it("plan writes no file, and no plan for a complaint in that visit", () => {
    const file = join(folder, "plan.txt");
    expect(asked("plan", "-o", file, visit()).code).toBe(1);
    expect(() => readFileSync(file)).toThrow();
    const { code, out } = asked("plan", "--complaint", "cough in weaners", visit());
    expect([code, out]).toEqual([1, ""]);
  });

  it("check and manifest show the notice and answer", () => {
    for (const command of ["check", "manifest"]) {
      const { out, err } = asked(command, visit());
      expect(err).toContain("STOP");
      expect(out).toContain("01-A");
    }
  });

  it("plan goes on once the authority has excluded it", () => {
    const file = join(visit(), "pig-01.yaml");
    const before = readFileSync(file, "utf8");
    const released =
      "authority: [{at: 2026-11-08T11:00, reached: duty officer, stands: released, for: [vesicles], ground: official veterinarian looked at the pig and its pen}]\n";
    writeFileSync(file, before + released);
    const { code, out } = asked("plan", visit());
    writeFileSync(file, before);
    expect([code, out.includes("Nervous signs")]).toEqual([0, true]);
  });

  it("a complaint of blisters is answered by the notice alone", () => {
    const { code, out, err } = asked("plan", "--complaint", "blisters on the snout of sows");
    expect([code, out]).toEqual([1, ""]);
    expect(err).toContain("foot-and-mouth disease");
  });
});

describe("what cannot be used", () => {
  it.each([
    [["plan", "--complaint", "hello"], 'nothing in "hello" tells what to sample'],
    [["plan", "--complaint", "scour"], "say how old the pigs are"],
    [["plan", "--complaint", "scour", "--ages", "old"], '"old" is no age'],
    [["plan", "--ages", "5 wk", "tests/fixtures/samples/skin"], "--ages belongs to --complaint"],
    [["check", "--now", "Monday", "tests/fixtures/samples/skin"], "--now: write a day and a time"],
    [["manifest", "--format", "pdf", "tests/fixtures/samples/skin"], 'there is no format "pdf"'],
  ])("%j ends with 2 and says what to write", (args, says) => {
    const { code, out, err } = asked(...args);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(says);
  });
});
