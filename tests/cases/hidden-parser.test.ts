/** The YAML parsers stay hidden: one file knows each library, one other the wording of errors. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

const source = fileURLToPath(new URL("../../src/", import.meta.url));
const files = readdirSync(source, { recursive: true, encoding: "utf8" }).filter((name) =>
  name.endsWith(".ts"),
);
const text = (file: string): string => readFileSync(`${source}${file}`, "utf8");

it("one file imports each parser", () => {
  const importing = (library: string): string[] =>
    files.filter((file) =>
      new RegExp(`(from|import|require)\\s*\\(?\\s*["']${library}(/[^"']*)?["']`).test(text(file)),
    );
  expect(importing("yaml")).toEqual(["cases/yaml/yaml-document.ts"]);
  expect(importing("js-yaml")).toEqual(["cases/yaml/quick-tree.ts"]);
});

it("only yaml-document.ts and syntax-messages.ts know its error codes", () => {
  const knowing = files.filter((file) =>
    /TAB_AS_INDENT|BAD_DIRECTIVE|BLOCK_AS_IMPLICIT_KEY|NON_STRING_KEY/.test(text(file)),
  );
  expect(knowing.sort()).toEqual(["cases/yaml/syntax-messages.ts", "cases/yaml/yaml-document.ts"]);
});

it("only files of this room know the nodes of a text, and what merges two texts; the rest sees SourceDocument", () => {
  const outside = files.filter((file) => !/^(?:cases\/|history\/merge-parts\.ts$)/.test(file));
  expect(
    outside.filter((file) => /source-(tree|places|checks|value)|PlacedDocument/.test(text(file))),
  ).toEqual([]);
});
