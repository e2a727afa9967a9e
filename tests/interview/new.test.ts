/** The questions of `carcase new` in a terminal: what is asked, asked again, and broken off. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { Terminal } from "./terminal.ts";

const visit = "alder-farm/2026-04-20";
const answers = {
  "Folder of the visit": `${visit}\r`,
  "Group the pigs come from": "nursery-2\r",
  "How many pigs it has usually": "420\r",
  "Their age": "58 d\r",
  "What the ill ones show": "sneezing, cough\r",
  "How many of those will be opened": "2\r",
  "How many healthy ones": "1\r",
  Protocol: "\r",
  "Your name": "H. Marlow\r",
  "What the farm reported": "sneezing since weaning\r",
};

describe("carcase new in a terminal", () => {
  it("asks for what makes the files shorter, and writes them", async () => {
    const cwd = temporaryFolder();
    const terminal = new Terminal(["new"], cwd);
    await terminal.play(answers, `carcase lint ${visit}`);
    expect(await terminal.exit).toBe(0);
    const read = (file: string): string => readFileSync(join(cwd, file), "utf8");
    expect(read("alder-farm/farm.yaml")).toContain("nursery-2: {head: 420, class: weaner, pens: }");
    expect(read(`${visit}/visit.yaml`)).toMatch(
      /veterinarian: H. Marlow\ncomplaint: sneezing since weaning\nsigns: \[sneezing, cough\]/,
    );
    expect(read(`${visit}/visit.yaml`)).toContain("pig: {group: nursery-2, age: 58 d}");
    expect(read(`${visit}/pig-02.yaml`)).toContain("selection: {basis: clinical, signs: [sneezing, cough]");
    expect(read(`${visit}/pig-03.yaml`)).toContain("selection: {basis: comparison, signs: [none]");
    expect(terminal.brokenLines).toEqual([]);
  });

  it("asks again where an answer cannot be, and not for what was given", async () => {
    const cwd = temporaryFolder();
    const { "Their age": _age, "Your name": _name, ...rest } = answers;
    const terminal = new Terminal(["new", "--age", "58 d", "--veterinarian", "H. Marlow"], cwd);
    await terminal.see("Folder of the visit");
    terminal.press("\r");
    await terminal.see("It is needed");
    const { "How many pigs it has usually": _head, ...others } = rest;
    await terminal.play(others, "How many pigs it has usually");
    terminal.press("many\r");
    await terminal.see("Write a number, or nothing.");
    terminal.press("420\r");
    await terminal.see("What the ill ones show");
    terminal.press("coughing a lot\r");
    await terminal.see('"coughing-a-lot" is not one of');
    await terminal.play(others, `carcase lint ${visit}`);
    expect(await terminal.exit).toBe(0);
    expect(terminal.said).not.toMatch(/Their age|Your name/);
    expect(existsSync(join(cwd, visit, "pig-03.yaml"))).toBe(true);
  });

  it("writes nothing where it is broken off", async () => {
    const cwd = temporaryFolder();
    const terminal = new Terminal(["new"], cwd);
    await terminal.see("Folder of the visit");
    terminal.press(`${visit}\r`);
    await terminal.see("Group the pigs come from");
    terminal.press("\u0003");
    await terminal.see("broken off; nothing was written");
    expect(await terminal.exit).toBe(2);
    expect(existsSync(join(cwd, "alder-farm"))).toBe(false);
  });
});
