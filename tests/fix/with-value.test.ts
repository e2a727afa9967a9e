import { describe, expect, it } from "vitest";
import type { Path } from "../../src/cases/index.ts";
import { withValue } from "../../src/fix/index.ts";

const file = `# of the visit in March
format: 1
case: a-01  # the runt
pig: {tag: , sex: }  # told by the owner
# Due: external.
normal:
external:
  # both sides
  skin:
  feet: normal
lymphoid: {tonsil: normal}
respiratory:
  lungs:
    consolidation:
      left_cranial: 20  # the edge only
`;

const edits: readonly (readonly [what: string, path: Path, value: unknown, lines: string])[] = [
  ["a blank in braces", ["pig", "sex"], "female", "pig: {tag: , sex: female}  # told by the owner\n"],
  ["a text like a number", ["pig", "tag"], "2217", 'pig: {tag: "2217", sex: }  # told by the owner\n'],
  ["a blank key", ["external", "skin"], "normal", "  # both sides\n  skin: normal\n"],
  ["a key in its order", ["external", "snout"], "normal", "  skin:\n  snout: normal\n  feet: normal\n"],
  ["a system in braces", ["lymphoid", "spleen"], "normal", "lymphoid: {spleen: normal, tonsil: normal}\n"],
  ["a group above the comment", ["opened", "state"], "fresh", "opened: {state: fresh}\n# Due: external.\n"],
  ["a system at the end", ["urinary", "rest"], "normal", "urinary:\n  rest: normal\n"],
  [
    "findings",
    ["external", "skin"],
    [{ process: "wound", site: "left flank, low" }],
    '  skin:\n    - {process: wound, site: "left flank, low"}\n',
  ],
  [
    "beside a comment",
    ["respiratory", "lungs", "consolidation", "left_middle"],
    30,
    "      left_cranial: 20  # the edge only\n      left_middle: 30\n",
  ],
];

describe("a value that is written into a case", () => {
  it("stands where an editor would put it, and nothing else changes", () => {
    for (const [what, path, value, lines] of edits) {
      const after = withValue(file, path, value) ?? "";
      expect(after, what).toContain(lines);
      const without = (text: string): string[] =>
        text.split("\n").filter((line) => !lines.includes(line.trim()));
      for (const line of without(after)) expect(file.split("\n"), what).toContain(line);
      expect(after.match(/#/g), what).toHaveLength(6);
    }
  });

  it("keeps the ends of lines", () => {
    const after = withValue(file.replaceAll("\n", "\r\n"), ["external", "skin"], "normal") ?? "";
    expect(after).toContain("  skin: normal\r\n");
    expect(after.match(/(?<!\r)\n/)).toBeNull();
  });

  it("is not written where a comment would be lost, or where the file cannot be read", () => {
    expect(withValue(file, ["respiratory", "lungs"], "normal")).toBeUndefined();
    expect(withValue(`${file}pig: {}\n`, ["external", "skin"], "normal")).toBeUndefined();
  });
});
