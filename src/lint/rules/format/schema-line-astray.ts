import { existsSync } from "node:fs";
import { leadsNowhere, namedSchema, schemaLine, schemaPlace } from "../../../schemas/index.ts";
import { type FileRule, practice } from "../../rule.ts";

export const schemaLineAstray: FileRule = {
  id: "schema-line-astray",
  scope: "file",
  family: "format",
  level: "note",
  summary: "A line that tells editors where the schema of a file lies leads to one.",
  protects:
    "An editor that finds no schema completes nothing and underlines nothing, and a mistyped key is seen only when the linter runs.",
  lookAlike:
    "A case that was moved out of its folder: the schema is where it was, so correct the way to it, or run carcase schema --write schemas here.",
  source: practice("the line is a convention of YAML language servers"),
  bad: { schema: "../../schemas/case.schema.json", case: "format: 1" },
  good: { schema: "../schemas/case.schema.json", case: "format: 1", files: ["../schemas/case.schema.json"] },
  check(one, report) {
    const named = namedSchema(one.document.text)?.schema;
    // A case from standard input lies nowhere itself.
    if (named === undefined || !leadsNowhere(one.file, named) || !existsSync(one.file)) return;
    const kind = "cases" in one ? "visit" : "organ" in one ? "case" : "farm";
    const schema = schemaPlace(one.file, kind);
    report(
      `there is no schema at ${named.slice(0, 100)}, so an editor checks nothing here. ${
        schema === undefined
          ? "Run carcase schema --write schemas, which shows the line to write instead"
          : `Write ${schemaLine(schema)}`
      }, or take the line out.`,
      [],
      "schema line",
    );
  },
};
