/** The YAML parser stays hidden: one file knows the library, one other the wording of its errors. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

const source = fileURLToPath(new URL("../../src/", import.meta.url));
const files = readdirSync(source, { recursive: true, encoding: "utf8" }).filter((name) =>
  name.endsWith(".ts"),
);
const text = (file: string): string => readFileSync(`${source}${file}`, "utf8");

it("only yaml-document.ts imports the parser", () => {
  const knowing = files.filter((file) =>
    /(from|import|require)\s*\(?\s*["'](yaml|js-yaml)(\/[^"']*)?["']/.test(text(file)),
  );
  expect(knowing).toEqual(["cases/yaml-document.ts"]);
});

it("only yaml-document.ts and syntax-messages.ts know its error codes", () => {
  const knowing = files.filter((file) =>
    /TAB_AS_INDENT|BAD_DIRECTIVE|BLOCK_AS_IMPLICIT_KEY|NON_STRING_KEY/.test(text(file)),
  );
  expect(knowing.sort()).toEqual(["cases/syntax-messages.ts", "cases/yaml-document.ts"]);
});

it("only files of this room know the nodes of a text; the rest sees SourceDocument", () => {
  const outside = files.filter((file) => !file.startsWith("cases/"));
  expect(
    outside.filter((file) => /source-(tree|places|checks|value)|PlacedDocument/.test(text(file))),
  ).toEqual([]);
});
