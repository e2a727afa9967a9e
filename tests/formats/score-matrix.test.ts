/** The matrix: marks that can be told apart without colour, worst pig first, never wider than a terminal. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Archive, readCases } from "../../src/cases/index.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { scoreMatrix } from "../../src/formats/score/matrix.ts";
import { type Mark, markCharacter } from "../../src/formats/score/matrix-marks.ts";
import { scoreCases } from "../../src/score/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";

const reasons: readonly Mark[] = ["not recorded", "not assessable", "no score", "no order"];

describe.each(["unicode", "ascii"] as const)("marks in %s", (alphabet) => {
  it("differ for 0, each reason and any value", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, minExcluded: true, noNaN: true }), (share) => {
        const marks = [share, 0, ...reasons].map((mark) => markCharacter(mark, alphabet));
        expect(new Set(marks).size).toBe(6);
        for (const mark of marks) expect(mark).toHaveLength(1);
      }),
    );
  });

  it("grow with the value and reach their highest at the highest value only", () => {
    const ramp = [
      ...new Set(Array.from({ length: 1000 }, (_, index) => markCharacter((index + 1) / 1000, alphabet))),
    ];
    expect(ramp.join("")).toBe(alphabet === "unicode" ? "▁▂▃▄▅▆▇█" : ":=+*#@");
  });
});

function archive(pigs: Readonly<Record<string, unknown>>): Archive {
  const root = temporaryFolder();
  put(
    root,
    Object.fromEntries(
      Object.entries(pigs).map(([id, turbinates]) => [
        `${id}.yaml`,
        JSON.stringify({ format: 1, case: id, pig: { group: "nursery" }, respiratory: { turbinates } }),
      ]),
    ),
  );
  return readCases(["."], { from: root });
}

const drawn = (from: Archive, scales?: readonly string[], width = 80): string[] =>
  scoreMatrix(scoreCases(from, scales === undefined ? {} : { scales }).cases, from, {
    style: makeStyle(false),
    alphabet: "ascii",
    width,
  }).split("\n");
const rowOf = (lines: readonly string[], id: string): string =>
  lines.find((line) => line.startsWith(`  ${id} `)) ?? "";

describe("the matrix", () => {
  const section = "premolar-1";
  const full = (loss: number) => ({
    section,
    left: { dorsal: loss, ventral: loss },
    right: { dorsal: loss, ventral: loss },
    septum: "straight",
  });
  const herd = archive({
    mild: full(1),
    worst: full(4),
    none: full(0),
    rotten: { not_assessable: { because: "autolysed" } },
    closed: { not_examined: "sold" },
    front: { ...full(2), section: "rostral-to-premolar-1" },
    half: { section, left: { dorsal: 2 } },
  });
  const lines = drawn(herd, ["polloni-2018"]);

  it("of one scale has a column a part and one for the score", () => {
    expect(rowOf(lines, "worst")).toMatch(/nursery {2}@ @ @ @ \. @$/);
    expect(rowOf(lines, "mild")).toMatch(/nursery {2}= = = = \. =$/);
    expect(rowOf(lines, "none")).toMatch(/nursery {2}\. \. \. \. \. \.$/);
    expect(rowOf(lines, "rotten")).toMatch(/nursery {2}x x x x x x$/);
    expect(rowOf(lines, "closed")).toMatch(/nursery {2}- - - - - -$/);
    expect(rowOf(lines, "half")).toMatch(/nursery {2}\+ - - - - -$/);
    expect(rowOf(lines, "front")).toMatch(/nursery {2}\+ \+ \+ \+ \. \?$/);
    expect(lines.join("\n")).toContain("a left dorsal concha   b left ventral concha");
  });

  it("has the worst pig at the top and pigs without values at the end", () => {
    const order = lines.flatMap((line) => /^ {2}(\w+) +nursery/.exec(line)?.[1] ?? []);
    expect(order.slice(0, 1)).toEqual(["worst"]);
    expect(order.indexOf("mild")).toBeLessThan(order.indexOf("none"));
    expect(order.slice(-2).sort()).toEqual(["closed", "rotten"]);
  });

  it("says what each mark means", () => {
    expect(lines.join(" ")).toContain("from the healthy end of the scale to the worst");
    expect(lines.join(" ")).toMatch(
      /\. healthy end \(mostly 0\) +o a value without better or worse +- not recorded/,
    );
    expect(lines.join(" ")).toContain("x not assessable   ? recorded, but no score");
  });

  it("of several scales has a column each, and names those without any record", () => {
    const several = drawn(herd, ["polloni-2018", "maff-1978", "christensen-1999"]);
    expect(rowOf(several, "worst")).toMatch(/nursery {2}@ -$/);
    expect(rowOf(several, "rotten")).toMatch(/nursery {2}x x$/);
    expect(several.join(" ")).toContain("Nothing recorded for christensen-1999.");
  });

  it("puts the snout with the least concha at the top, although its ratio is the lowest", () => {
    const measured = (total: number) => ({ section, measured: { perimeter_ratio: { total } } });
    const ratios = archive({
      whole: measured(1.54),
      mild: measured(1.25),
      worst: measured(0.73),
      blank: { section },
    });
    const marked = drawn(ratios, ["collins-1989-perimeter"]);
    expect(rowOf(marked, "worst")).toMatch(/ @$/);
    expect(rowOf(marked, "mild")).toMatch(/ \+$/);
    expect(rowOf(marked, "whole")).toMatch(/ \.$/);
    expect(rowOf(marked, "blank")).toMatch(/ -$/);
    expect(marked.findIndex((line) => line.includes("worst"))).toBeLessThan(
      marked.findIndex((line) => line.includes("mild")),
    );
  });

  it.each([60, 100, 200])("stays within %d characters where the page has them", (width) => {
    for (const line of drawn(herd, undefined, width)) expect(line.length, line).toBeLessThanOrEqual(width);
    const most = Math.max(...drawn(herd, undefined, width).map((line) => line.length));
    expect(most).toBeGreaterThan(width / 2);
  });

  it("stays within 80 characters, with every scale and long names, and hides nothing", () => {
    const long = archive({ [`a-${"very-".repeat(15)}long-name-01`]: full(3), b: full(1) });
    const all = drawn(long);
    for (const line of all) expect(line.length, line).toBeLessThanOrEqual(80);
    expect(all.join("\n")).toMatch(/ {2}\.\.[\w-]*-name-01 /);
  });
});
