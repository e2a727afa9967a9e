/** Where a text stops being JSON is said by line and column, and never by what stands there. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jsonFault } from "../../src/measure/json-fault.ts";

describe("a text that is no JSON", () => {
  it.each([
    ['{"a": 1,}', 1, 9, "a name in double quotes"],
    ['{\n  "a": 1\n  "b": 2}', 3, 3, "a comma"],
    ["{part: 1}", 1, 2, "a name in double quotes"],
    ['{"a" 1}', 1, 6, 'a ":"'],
    ['{"a": secret}', 1, 7, "a value"],
    ['{"a": 01}', 1, 8, "a comma"],
    ['{"a": [1 2]}', 1, 10, "a comma"],
    ['{"a": [1,]}', 1, 10, "a value"],
    ['{"a": "b\nc"}', 1, 7, "a value"],
    ['{"a": "\\x"}', 1, 7, "a value"],
    ['{"a": 1}}', 1, 9, "more follows"],
    ['{"a": 1]', 1, 8, "a comma"],
    ['{"a": [1, 2', 0, 0, "ends too early"],
    ["", 0, 0, "ends too early"],
  ])("%j", (text, line, column, says) => {
    const { what, place } = jsonFault(text);
    expect(place).toMatchObject({ line, column });
    expect(what).toContain(says);
    expect(what).not.toContain("secret");
  });

  it("is named at the word or text that was broken, and never after it", () => {
    const broken = fc.tuple(fc.json({ maxDepth: 4 }), fc.nat(), fc.constantFrom(0, 2));
    fc.assert(
      fc.property(broken, ([json, number, indent]) => {
        const text = JSON.stringify(JSON.parse(json), null, indent);
        const at = number % (text.length + 1);
        // A character that may stand nowhere in JSON.
        const { place } = jsonFault(`${text.slice(0, at)}\u0001${text.slice(at)}`);
        const before = text
          .split("\n")
          .slice(0, place.line - 1)
          .join("\n");
        const offset = before.length + (place.line > 1 ? 1 : 0) + place.column - 1;
        expect(offset).toBeLessThanOrEqual(at);
        expect(text.slice(offset, at)).toMatch(/^(?:"[^\n]*|[\w.+-]*)$/);
      }),
    );
  });
});
