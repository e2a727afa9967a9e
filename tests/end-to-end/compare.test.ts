/** `carcase compare` as a user runs it: the example farm, its formats, and what goes wrong. */
import { describe, expect, it } from "vitest";
import { carcase } from "./run.ts";

const farm = "cases-example/alder-farm";
const golden = (name: string): string => `../fixtures/golden/${name}`;
const named = ["--indicator", "snout-grade-2-up", "--scale", "maff-1978"];

describe("carcase compare", () => {
  it("prints what it printed, in 80 columns", async () => {
    const text = carcase(["compare", farm]);
    expect([text.code, text.err]).toEqual([0, ""]);
    await expect(text.out).toMatchFileSnapshot(golden("compare.txt"));
    expect(text.out.split("\n").filter((line) => line.length > 80)).toEqual([]);
    const json = carcase(["compare", "--format", "json", ...named, farm]);
    await expect(json.out).toMatchFileSnapshot(golden("compare.json"));
  });

  it("refuses with exit code 0: the groups of one visit are of different age", () => {
    const { code, out } = carcase(["compare", "--between", "groups", "--format", "json", farm]);
    expect(code).toBe(0);
    const { blocks } = JSON.parse(out);
    expect(blocks[0]).toMatchObject({ basis: "random", comparable: false });
    expect(blocks[0].reasons[0].factor).toBe("age");
    expect(blocks[0].comparisons.every((one: { p: unknown }) => one.p === null)).toBe(true);
  });

  it("compares a group, another level, although, quietly", () => {
    const room = carcase([
      "compare",
      "--where",
      "group=nursery-2",
      "--where",
      "basis=random",
      ...named,
      farm,
    ]);
    expect(room.out).toContain("3 of 4 on 2026-03-14, 1 of 5 on 2026-09-19");
    const level = carcase(["compare", "--level", "90%", "--even-if", "basis", ...named, farm]);
    expect(level.out).toContain("90 % interval");
    expect(level.out).toContain("compared although not comparable: other selection basis");
    const quiet = carcase(["compare", "-q", ...named, farm])
      .out.trimEnd()
      .split("\n");
    expect(quiet.filter((line) => line.startsWith("alder-farm"))).toHaveLength(2);
  });

  it("writes CSV with a line a side, and Markdown", () => {
    const csv = carcase(["compare", "--format", "csv", "--where", "basis=random", ...named, farm]);
    const [head, ...rows] = csv.out
      .trimEnd()
      .split("\r\n")
      .map((line) => line.split(","));
    expect(rows).toHaveLength(4);
    for (const row of rows) expect(row).toHaveLength(head?.length ?? 0);
    const markdown = carcase(["compare", "--format", "markdown", ...named, farm]).out;
    expect(markdown.match(/^\| /gm)?.length).toBe(8);
  });

  it.each([
    [["--between", "pens"], /there is no comparison "pens"/],
    [["--where", "nursery-2"], /write facet=value, such as --where group=nursery-2/],
    [["--where", "pen=3"], /no part "pen"/],
    [["--where", "group=nursery-4"], /no group "nursery-4"/],
    [["--even-if", "colour"], /no part "colour"/],
    [["--indicator", "snout"], /no indicator "snout"/],
    [["--scale", "maff"], /no scale "maff"/],
    [["--level", "95"], /did you mean 95%/],
    [["--format", "sarif"], /no format "sarif"/],
  ] as const)("%j is told what to write instead", (args, message) => {
    const { code, err } = carcase(["compare", ...args, farm]);
    expect(err).toMatch(message);
    expect(err).not.toContain("internal fault");
    expect(code).toBe(2);
  });

  it("has exit code 2 for a single pig and for no case", () => {
    const one = carcase(["compare", `${farm}/2026-03-14/pig-01.yaml`]);
    expect([one.code, one.err]).toEqual([
      2,
      "carcase: compare: there are no two visits of one farm and no two groups of one visit; give the folder of a farm, or rank many with --between farms\n",
    ]);
    expect(carcase(["compare", "src/words"]).code).toBe(2);
  });
});
