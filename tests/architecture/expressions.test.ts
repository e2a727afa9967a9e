/**
 * No regular expression of the program goes over the same characters again and again: neither two parts of it that could
 * take the same characters from one another, nor one that begins anew at each character of what it has just read.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { analyse } from "scslre";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { patternIn } from "../../src/notes/words-in.ts";
import { every } from "../every.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const filesIn = (folder: string, end: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(end))
    .map((name) => join(folder, name));
const read = (file: string): string => readFileSync(join(root, file), "utf8");

interface Expression {
  readonly id: string;
  readonly expression: RegExp;
}

/** Every expression that stands in the code as such, and the texts of those that it makes. */
function expressionsOf(file: string): { readonly written: Expression[]; readonly made: string[] } {
  const source = ts.createSourceFile(file, read(file), ts.ScriptTarget.Latest, true);
  const written: Expression[] = [];
  const made: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node)) {
      const text = node.getText();
      const end = text.lastIndexOf("/");
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      const expression = new RegExp(text.slice(1, end), text.slice(end + 1));
      written.push({ id: `${file}:${line + 1} ${text}`, expression });
    }
    if ((ts.isNewExpression(node) || ts.isCallExpression(node)) && node.expression.getText() === "RegExp")
      made.push(`${file}: ${node.arguments?.[0]?.getText() ?? ""}`);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { written, made };
}

const slow = (expression: RegExp): string[] =>
  analyse(expression).reports.map(({ type, character }) => `${type} with ${JSON.stringify(character.pick)}`);

const found = filesIn("src", ".ts").map(expressionsOf);

describe("regular expressions take no longer than the text they read", () => {
  every(
    "those of the code",
    found.flatMap(({ written }) => written),
    ({ expression }) => expect(slow(expression)).toEqual([]),
  );

  every(
    "those of the schemas",
    filesIn("schemas", ".json").flatMap((file) =>
      [...read(file).matchAll(/"pattern": ("(?:[^"\\]|\\.)*")/g)].map(([, pattern = '""']) => {
        const text: unknown = JSON.parse(pattern);
        return { id: `${file} ${text}`, expression: new RegExp(String(text), "u") };
      }),
    ),
    ({ expression }) => expect(slow(expression)).toEqual([]),
  );

  it("those that are made of a list of words, with all that such words may hold", () => {
    const words = ["dark red", "blister*", "foot-and-mouth", "oedema*", "a", "mouth lesion*", "n/a", "?"];
    expect(slow(patternIn(words.join(" "), words))).toEqual([]);
  });

  it("no others are made", () => {
    const kinds = new Set(found.flatMap(({ made }) => made).map((text) => text.replace(/^[^:]*\//, "")));
    expect([...kinds].sort()).toMatchInlineSnapshot(`
      [
        "suggestion.ts: pattern",
        "value-edits.ts: pattern",
        "value-message.ts: String(pattern)",
        "value-message.ts: pattern",
        "words-in.ts: \`(?<![\\\\p{L}\\\\d])(?:\${word})(?![\\\\p{L}\\\\d])\`",
      ]
    `);
  });

  it("would find one that goes back", () => {
    for (const expression of [/^(?:[ ]*[-?:][ ]+){9}/, /\s+$/, /^(a+)+$/, /^\d+\.?\d*!/, /^\s*,?\s*!/])
      expect(slow(expression), expression.source).not.toEqual([]);
  });
});
