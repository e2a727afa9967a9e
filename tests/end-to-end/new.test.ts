/** `carcase new` writes all of its files or none, and never over one that is there. */
import { existsSync, readdirSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { runs } from "../random.ts";
import { isEqual, killOften, measured, tree } from "./kill.ts";
import { carcase } from "./run.ts";

const visit = "alder-farm/2026-04-20";
const four = ["new", visit, "--pigs", "4"];
const begun = (cwd: string, args = four) => carcase(args, { cwd });

describe("carcase new", () => {
  it("says what it wrote, and what to do next", () => {
    const cwd = temporaryFolder();
    const { code, out, err } = begun(cwd, [...four, "--healthy", "1"]);
    expect([code, err]).toEqual([0, ""]);
    expect(out.split("\n").slice(0, 7)).toEqual([
      "alder-farm/farm.yaml",
      `${visit}/visit.yaml`,
      ...[1, 2, 3, 4, 5].map((number) => `${visit}/pig-0${number}.yaml`),
    ]);
    expect(out).toContain(`carcase lint ${visit}`);
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it("adds pigs to a visit that is there, and changes nothing of it", () => {
    const cwd = temporaryFolder();
    begun(cwd);
    const before = readFileSync(join(cwd, visit, "visit.yaml"), "utf8");
    const { code, out } = begun(cwd, ["new", visit, "--pigs", "2"]);
    expect(code).toBe(0);
    expect(out).toContain("alder-farm-2026-04-20-05, alder-farm-2026-04-20-06");
    expect(readFileSync(join(cwd, visit, "visit.yaml"), "utf8")).toBe(before);
    expect(readdirSync(join(cwd, visit, "pigs-05-06"))).toEqual(["pig-05.yaml", "pig-06.yaml"]);
    expect(begun(cwd, ["new", visit, "--pigs", "1"]).code).toBe(0);
    expect(readdirSync(join(cwd, visit)).sort()).toEqual([
      ...["pig-01.yaml", "pig-02.yaml", "pig-03.yaml", "pig-04.yaml", "pig-07.yaml"],
      ...["pigs-05-06", "visit.yaml"],
    ]);
    const { completeness } = JSON.parse(carcase(["lint", visit, "--format", "json"], { cwd }).out);
    expect(completeness).toHaveLength(7);
  });

  it("writes none of its files where one cannot be written", () => {
    const cwd = temporaryFolder();
    put(cwd, { "alder-farm/other.txt": "kept" });
    // A link that leads nowhere is there all the same.
    symlinkSync(join(cwd, "nowhere"), join(cwd, "alder-farm/farm.yaml"));
    const { code, out, err } = begun(cwd);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain("farm.yaml");
    expect(existsSync(join(cwd, visit))).toBe(false);
    expect(existsSync(join(cwd, "nowhere"))).toBe(false);
    expect(readdirSync(join(cwd, "alder-farm")).sort()).toEqual(["farm.yaml", "other.txt"]);
  });

  it.each([
    [[], "name the folder of the visit"],
    [[visit], "say how many pigs"],
    [[visit, "--pigs", "x"], "--pigs: "],
    [[visit, "--pigs", "0"], "no pig is asked for"],
    [[visit, "--pigs", "400"], "ask for 200 at most"],
    [["alder-farm/april", "--pigs", "1"], "--date 2026-03-14"],
    [[visit, "--pigs", "1", "--date", "20.4.2026"], "year first"],
    [[visit, "--pigs", "1", "--age", "58"], "--age: "],
    [[visit, "--pigs", "1", "--signs", "coughing a lot"], "--signs: "],
    [[visit, "--pigs", "1", "--protocol", "ful"], "--protocol: "],
    [[visit, "--draw", "draw.csv"], "there is no such file"],
    [[visit, "--draw", "bad.csv"], "bad.csv:2:9: drawn: "],
    [[visit, "--draw", "good.csv", "--pigs", "2"], "--draw says which pigs"],
  ])("refuses %j with what to write, and writes nothing", (args, says) => {
    const cwd = temporaryFolder();
    put(cwd, {
      "bad.csv": "use,drawn,line,tag\nexamine,x,1,2201\n",
      "good.csv": "use,drawn,line,tag\nexamine,1,1,2201\n",
    });
    const { code, out, err } = carcase(["new", ...args], { cwd });
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(says);
    expect(err.trim().split("\n")).toHaveLength(1);
    expect(existsSync(join(cwd, "alder-farm"))).toBe(false);
  });

  it("begins with the pigs that plan choose drew, in their order", () => {
    const cwd = temporaryFolder();
    put(cwd, { "tags.txt": "2201\n0202\n2203\n2204\n2205\n2206\n" });
    const drawn = carcase(
      [
        "plan",
        "choose",
        "tags.txt",
        "--pigs",
        "3",
        "--reserve",
        "2",
        "--seed",
        "7",
        "--format",
        "csv",
        "-o",
        "draw.csv",
      ],
      { cwd },
    );
    expect(drawn.code).toBe(0);
    const rows = readFileSync(join(cwd, "draw.csv"), "utf8")
      .trim()
      .split(/\r?\n/)
      .map((line) => line.split(","));
    const { code, out } = carcase(["new", visit, "--draw", "draw.csv", "--age", "8 wk"], { cwd });
    expect(code).toBe(0);
    for (const [use = "", order = "", , tag = ""] of rows.slice(1)) {
      if (use === "reserve") expect(out).toContain(tag);
      else
        expect(readFileSync(join(cwd, visit, `pig-0${order}.yaml`), "utf8")).toMatch(
          new RegExp(`tag: "${tag}".*\\nselection: \\{basis: random, `),
        );
    }
    const text = readFileSync(join(cwd, visit, "visit.yaml"), "utf8");
    expect(text).toMatch(/drawn: "3 by lot from the list draw.csv; reserve, in order: /);
  });
});

/** 12 in npm test, 50 in a long search. */
const kills = runs(50) > 50 ? 50 : 12;

describe(`new that is killed, ${kills} times`, () => {
  const farm = { "alder-farm/farm.yaml": "format: 1\nfarm: alder-farm\n" };
  const visited = { [`${visit}/visit.yaml`]: "format: 1\nvisit: alder-farm-2026-04-20\ndate: 2026-04-20\n" };
  const starts: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    nothing: {},
    "a farm": farm,
    "a folder without a farm": { "alder-farm/notes.txt": "cold barn\n" },
    "a visit": { ...farm, ...visited },
  };

  it("leaves all of its files or none", { timeout: 600_000 }, async () => {
    for (const [name, there] of Object.entries(starts)) {
      const start = (): string => {
        const cwd = temporaryFolder();
        put(cwd, there);
        return cwd;
      };
      const first = start();
      const whole = await measured(four, first);
      const all = tree(first);
      await killOften({
        what: `new, ${name}`,
        many: Math.ceil(kills / 4),
        args: four,
        whole,
        made: start,
        seen(cwd, told) {
          const now = tree(cwd);
          const left = isEqual(now, there) ? "old" : isEqual(now, all) ? "new" : "between";
          // The farm came with its visit, and is not put above it yet.
          if (left === "between") {
            const { [`${visit}/farm.yaml`]: moved = "", ...rest } = now;
            expect({ "alder-farm/farm.yaml": moved, ...rest }, told).toEqual(all);
          }
          if (left === "old") expect([carcase(four, { cwd }).code, tree(cwd)], told).toEqual([0, all]);
          return left;
        },
      });
    }
  });
});
