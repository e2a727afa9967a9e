/** A text written anew in a later format says the same, and keeps all that people wrote beside it. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, parseDocument } from "yaml";
import { roleOf } from "../../src/cases/files/find.ts";
import { migrateText, type Step } from "../../src/migrate/index.ts";
import { root } from "../end-to-end/run.ts";
import { every } from "../every.ts";
import { runs } from "../random.ts";
import { toThree, toTwo } from "./to-two.ts";

const text = (before: string, migrations = [toTwo]): string => {
  const migrated = migrateText(before, "case", migrations);
  return migrated !== undefined && "text" in migrated ? migrated.text : expect.fail(JSON.stringify(migrated));
};

const whole = `# yaml-language-server: $schema=../schemas/case.schema.json
format: 1   # the first
case: x-1
pig:
  # written on the ear
  tag: '7'  # red
  sex: castrate # seen
history:  # by telephone
  - the sow was ill   # and the piglets

  - for a week

# what we saw
respiratory: {lungs: normal}   # both sides
"note": |
  # no comment
  history: none
`;

describe("a text of an older format", () => {
  it("changes where it has to, and nowhere else", () => {
    expect(text(whole)).toBe(
      whole
        .replace("format: 1", "format: 2")
        .replace("tag: '7'", "mark: '7'")
        .replace("sex: castrate", "sex: neutered male")
        .replace(/history: {2}# by[\s\S]*?week\n/, "# by telephone\n# and the piglets\n")
        .replace("respiratory:", "airways:"),
    );
  });

  it("is written anew once", () => {
    expect(migrateText(text(whole), "case", [toTwo])).toBeUndefined();
    expect(migrateText("format: 7\ncase: x-1\n", "case", [toTwo])).toBeUndefined();
    expect(migrateText("case: x-1\n", "case", [toTwo])).toBeUndefined();
    expect(migrateText("format: [\n", "case", [toTwo])).toBeUndefined();
  });

  it("goes through all versions in their order, in one go or in several", () => {
    const third = text(whole, [toThree, toTwo]);
    expect(third).toBe(text(text(whole), [toTwo, toThree]));
    expect(third).toContain("format: 3   # the first");
    expect(third).toContain("label: '7'  # red");
  });

  it("keeps line ends, and a last line without one", () => {
    const windows = whole.replaceAll("\n", "\r\n").trimEnd();
    expect(text(windows)).toBe(text(whole).replaceAll("\n", "\r\n").trimEnd());
  });

  it.each<[string, string, Step]>([
    ["an entry that goes in braces", "pig: {tag: '7', sex: female}", { path: ["pig", "tag"], gone: true }],
    ["a name that is taken", "pig: {tag: '7', mark: '8'}", { path: ["pig", "tag"], key: "mark" }],
    [
      "a value that others refer to",
      "pig: {sex: &s male}\nnote: *s",
      { path: ["pig", "sex"], value: "boar" },
    ],
    ["a text over several lines", "note: a\n  b", { path: ["note"], value: "c" }],
    ["a path that leads nowhere", "pig: {tag: '7'}", { path: ["pig", "sex"], value: "male" }],
    ["an entry with its key behind a mark", "? note\n: a", { path: ["note"], gone: true }],
  ])("is left as it is with %s, and the line is told", (_, rest, step) => {
    const migrated = migrateText(`format: 1\ncase: x-1\n${rest}\n`, "case", [
      { ...toTwo, steps: () => [step] },
    ]);
    expect(migrated).toEqual({ step, line: expect.any(Number), says: toTwo.says });
  });
});

/** What becomes of a value, written down once more without the machinery. */
function expected(value: Record<string, unknown>, kind: string): unknown {
  const json = JSON.stringify(
    { ...value, format: 2, ...(kind === "case" && { history: undefined }) },
    (key, item) => {
      if (typeof item !== "object" || item === null || Array.isArray(item)) return item;
      const rename = (from: string, to: string) =>
        from in item ? { ...item, [to]: item[from], [from]: undefined } : item;
      if (key === "pig" && kind === "case") {
        const pig = rename("tag", "mark");
        return pig.sex === "castrate" ? { ...pig, sex: "neutered male" } : pig;
      }
      if (key !== "") return item;
      return kind === "case"
        ? rename("respiratory", "airways")
        : kind === "visit"
          ? rename("complaint", "told")
          : item;
    },
  );
  return JSON.parse(json);
}

const example = join(root, "cases-example");
const files = readdirSync(example, { recursive: true, encoding: "utf8" }).filter((name) =>
  name.endsWith(".yaml"),
);
const kindOf = (name: string) => {
  const role = roleOf(name);
  return role === "other" ? "case" : role;
};
const commentsOf = (of: string): string[] => of.match(/(?:^|\s)#.*$/gm)?.map((one) => one.trim()) ?? [];

every("each file of the example says the same afterwards", files, (name) => {
  const before = readFileSync(join(example, name), "utf8");
  const migrated = migrateText(before, kindOf(name), [toTwo]);
  if (migrated === undefined || !("text" in migrated)) return expect.fail(JSON.stringify(migrated));
  expect(parse(migrated.text)).toEqual(expected(parse(before), kindOf(name)));
  expect(commentsOf(migrated.text)).toEqual(commentsOf(before));
  const lines = before.split("\n");
  expect(migrated.text.split("\n").filter((line) => !lines.includes(line)).length).toBeLessThan(6);
});

it("no comment is lost, wherever it stands", () => {
  const name = join(example, "alder-farm/2026-03-14/pig-02.yaml");
  const lines = readFileSync(name, "utf8")
    .replace("case:", "history: the sow was ill\ncase:")
    .trimEnd()
    .split("\n");
  let done = 0;
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat(lines.length - 1), fc.boolean()), { maxLength: 12 }), (places) => {
      const commented = lines.map((line, index) =>
        places
          .filter(([at]) => at === index)
          .reduce((whole, [at, behind]) => (behind ? `${whole} # c${at}` : `# a${at}\n${whole}`), line),
      );
      const before = `${commented.join("\n")}\n`;
      if (parseDocument(before).errors.length > 0) return;
      const migrated = migrateText(before, "case", [toTwo]);
      if (migrated === undefined) return expect.fail();
      if (!("text" in migrated)) return;
      done++;
      expect(parse(migrated.text)).toEqual(expected(parse(before), "case"));
      expect(commentsOf(migrated.text)).toEqual(commentsOf(before));
    }),
    { numRuns: runs(30) },
  );
  expect(done).toBeGreaterThan(runs(30) / 2);
});
