/** No table is wider than its page, and nothing in it is cut for that. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heading, table } from "../../src/formats/page/blocks.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { textOf } from "../../src/formats/page/text.ts";
import { displayWidth } from "../../src/formats/page/width.ts";
import { temporaryFolder } from "../cases/temporary.ts";
import { carcase } from "../end-to-end/run.ts";

const farm = "cases-example/alder-farm";
const test = ["--indicator", "snout-grade-2-up", "--sensitivity", "45/50", "--specificity", "98/100"];

/** Two readers who used 26 grades. */
function manyGrades(): string {
  const lines = Array.from({ length: 40 }, (_, pig) => [
    `${pig},A. First,${pig % 26}`,
    `${pig},B. Second,${(pig + 1) % 26}`,
  ]);
  const file = join(temporaryFolder(), "readings.csv");
  writeFileSync(file, `pig,reader,madec-kobisch-1982\n${lines.flat().join("\n")}\n`);
  return file;
}

/** Every line of these, but YAML that is to be copied as it stands. */
const commands: readonly (readonly string[])[] = [
  ["lint", "cases-example"],
  ["herd", "cases-example"],
  ["herd", "--all", "cases-example"],
  ["herd", farm],
  ["herd", "--all", farm],
  ["herd", "--by", "group,age_class", farm],
  ["herd", "--by", "none", farm],
  ["herd", "--by", "none", "--bootstrap", farm],
  ["herd", "--combine", "--finite", "--bootstrap", farm],
  ["herd", "--cluster", "pen", farm],
  ["herd", "--cluster", "room", "--level", "99.99%", farm],
  ["herd", "--bootstrap", "--by", "none", ...test, farm],
  ["herd", "--plot", "--combine", farm],
  ["score", "cases-example"],
  ["score", "--all", "cases-example"],
  ["score", "--by", "group,visit", "cases-example"],
  ["score", "--matrix", "cases-example"],
  ["score", "--matrix", "--scale", "goodwin-1971", farm],
  ["compare", farm],
  ["compare", "--between", "groups", "cases-example"],
  ["compare", "--even-if", "basis", "--cluster", "room", farm],
  ["agree", "cases-example/two-readers.csv"],
  ["agree", manyGrades()],
  ["measure", farm],
  [
    "plan",
    "detect",
    "--prevalence",
    "5%",
    "--herd",
    "600",
    "--sensitivity",
    "80%",
    "--confidence",
    "99.9999%",
  ],
  ["plan", "detect", "--prevalence", "5%", "--pool", "5", "--sensitivity", "80%"],
  ["plan", "detect", "--prevalence", "5%", "--sensitivity", "80%", "--specificity", "97%"],
  ["plan", "estimate", "--expected", "20%", "--within", "5%", "--from-each-pen", "4", "--correlation", "20%"],
  ["plan", "compare", "--from", "40%", "--to", "15%"],
  ["plan", "say", "--pigs", "12", "--herd", "600"],
  ["plan", "choose", farm, "--groups", "nursery-1", "--pigs", "12", "--reserve", "2", "--seed", "7"],
  ["plan", "choose", "--diagnostic"],
  ["import", "cases-example/tally.csv", "cases-example/alder-farm", "--date", "2026-10-02"],
  ["explain"],
  ["explain", "rules"],
  ["explain", "processes"],
  ["explain", "livor"],
  ["explain", "turbinates"],
];

describe("80 columns", () => {
  it.each(commands.map((args) => [args.join(" "), args]))("%s", (_, args) => {
    const { code, out, err } = carcase(args as string[], { env: { COLUMNS: "80" } });
    expect([0, ...(args[0] === "lint" ? [1] : []), 2], err).toContain(code);
    const lines = out.split("\n").filter((line) => !line.includes("as an observation:"));
    expect(lines.length).toBeGreaterThan(5);
    expect(lines.filter((line) => displayWidth(line) > 80)).toEqual([]);
  });
});

describe("any table", () => {
  const word = fc.constantFrom(
    "of",
    "pigs",
    "né",
    "猪圈",
    "consolidated",
    "finisher-3",
    "x".repeat(50),
    "y".repeat(90),
  );
  const words = (most: number) => fc.array(word, { maxLength: most });
  const cell = (right: boolean) =>
    right
      ? fc.oneof(
          fc.constant(""),
          fc.integer({ min: 10_000, max: 99_999 }).map((n) => `${n / 10} %`),
        )
      : words(8).map((some) => some.join(" "));
  const column = (right: boolean) =>
    fc.record({
      head: words(3).map((some) => some.join(" ")),
      right: fc.constant(right),
      detail: fc.boolean(),
      cells: fc.array(cell(right), { minLength: 4, maxLength: 4 }),
    });
  const columns = fc
    .tuple(column(false), fc.array(fc.boolean().chain(column), { minLength: 1, maxLength: 12 }))
    .map(([label, others]) => [{ ...label, detail: false }, ...others]);

  it("fits its page, keeps each number whole and loses no letter", () => {
    fc.assert(
      fc.property(columns, fc.integer({ min: 60, max: 120 }), fc.boolean(), (some, width, parts) => {
        const rows = [0, 1, 2, 3].map((at) => some.map(({ cells }) => cells[at] ?? ""));
        const text = textOf(table(some, rows, { parts }), makeStyle(false), width);
        expect(text.split("\n").filter((line) => displayWidth(line) > width)).toEqual([]);
        const shown = lettersOf(text);
        const filled = some.filter(({ cells }) => cells.some((one) => one !== ""));
        const given = lettersOf([...rows.flat(), ...filled.map(({ head }) => head)].join(" "));
        expect([...given].filter(([letter, times]) => (shown.get(letter) ?? 0) < times)).toEqual([]);
        const numbers = some.flatMap(({ right, cells }) => (right ? cells : []));
        expect(numbers.filter((number) => !text.includes(number))).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it("says a long label above its numbers, details below them", () => {
    const long = "Any turbinate loss or septum deviation (summed score 1 or more) of pigs";
    const shown = textOf(
      table(
        [
          { head: "" },
          ...["affected", "interval", "one-sided"].map((head) => ({ head, right: true })),
          { head: "score:pigs", detail: true },
        ],
        [
          [long, "3 of 4", "19.4 to 99.4 %", "at least 47.3 %", "0:1 2:3"],
          ["Pleurisy", "0 of 4", "0 to 60.2 %", "", ""],
        ],
      ),
      makeStyle(false),
      60,
    );
    expect(shown).toBe(
      [
        "            affected        interval        one-sided",
        "  Any turbinate loss or septum deviation (summed score 1 or",
        "    more) of pigs",
        "              3 of 4  19.4 to 99.4 %  at least 47.3 %",
        "      score:pigs 0:1 2:3",
        "  Pleurisy    0 of 4     0 to 60.2 %",
        "",
      ].join("\n"),
    );
  });
});

it("hangs what of a long heading goes on below", () => {
  const long = `2026-03-14 · H. Marlow · ${"Write what was seen of it ".repeat(4).trim()}`;
  const [first = "", second = ""] = textOf([heading(long, { level: 3 })], makeStyle(false), 80).split("\n");
  expect(displayWidth(first)).toBeLessThanOrEqual(80);
  expect(second).toMatch(/^ {2}\S/);
  expect(`${first} ${second.trim()}`).toBe(long);
});

/** How often each letter and digit stands in a text. */
function lettersOf(text: string): Map<string, number> {
  const counts = new Map<string, number>();
  for (const letter of text.replaceAll(/\s/g, "")) counts.set(letter, (counts.get(letter) ?? 0) + 1);
  return counts;
}
