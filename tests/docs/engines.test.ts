/** The queries of docs/engines.md are asked, of what its first lines export. `npm run docs` writes what comes back. */
import { spawnSync } from "node:child_process";
import { chmodSync, cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { expect, it } from "vitest";
import { parse } from "yaml";
import { tables } from "../../src/tables/index.ts";
import { temporaryFolder } from "../cases/temporary.ts";
import { carcase, root } from "../end-to-end/run.ts";
import { blocksOf, fence, textOf } from "./blocks.ts";
import { tablesPage } from "./tables-page.ts";

const page = "docs/engines.md";

it("docs/engines.md shows what DuckDB answers", async () => {
  const folder = temporaryFolder();
  const [exports] = blocksOf(page).filter(({ info }) => info === "sh");
  for (const line of (exports?.body ?? "").trim().split("\n")) {
    const [program, ...args] = line.replaceAll(" tables", ` ${join(folder, "tables")}`).split(" ");
    expect(program).toBe("carcase");
    expect(carcase(["export", "-q", ...args.slice(1)])).toMatchObject({ code: 0 });
  }
  const sql = await (await DuckDBInstance.create(":memory:", { threads: "1" })).connect();
  let answer = "";
  const asked: string[] = [];
  for (const { info, body } of blocksOf(page)) {
    if (info !== "sql") continue;
    for (const statement of body.split(/;\n/).filter((text) => text.trim() !== "")) {
      const read = await sql.runAndReadAll(statement.replaceAll("'tables/", `'${join(folder, "tables")}/`));
      answer = set(read.columnNames(), read.getRowsJson());
    }
    asked.push(answer);
  }
  expect(asked.length).toBeGreaterThan(1);
  let next = 0;
  let before = "";
  const text = textOf(page).replaceAll(fence, (whole, info: string) => {
    const isAnswer = before === "sql" && info === "text";
    before = info;
    return isAnswer ? `\`\`\`text\n${asked[next++]}\`\`\`` : whole;
  });
  expect(next).toBe(asked.length);
  if (process.env.UPDATE_DOCS !== undefined) writeFileSync(join(root, page), text);
  expect(textOf(page)).toBe(text);
});

/** Cells below their heads. */
function set(head: readonly string[], rows: readonly (readonly unknown[])[]): string {
  const cells = [head, ...rows.map((row) => row.map(String))];
  const widths = head.map((_, index) => Math.max(...cells.map((row) => row[index]?.length ?? 0)));
  return cells
    .map(
      (row) =>
        `${row
          .map((cell, index) => cell.padEnd(widths[index] ?? 0))
          .join("  ")
          .trimEnd()}\n`,
    )
    .join("");
}

interface Job {
  readonly strategy?: { readonly matrix: { readonly part: readonly number[] } };
  readonly steps: readonly { readonly run: string }[];
}

it("the jobs of docs/engines.md, one after the other, give the bytes of one run", () => {
  const [workflow] = blocksOf(page).filter(({ info }) => info === "yaml");
  const { jobs } = parse(workflow?.body ?? "") as { jobs: Record<"lint" | "merge", Job> };
  const top = temporaryFolder();
  // What npx does with a package that is there.
  const bin = join(top, "bin");
  mkdirSync(bin);
  writeFileSync(
    join(bin, "npx"),
    `#!/bin/sh\nshift\nexec "${process.execPath}" "${join(root, "bin/carcase.js")}" "$@"\n`,
  );
  chmodSync(join(bin, "npx"), 0o755);
  const archive = (name: string): string => {
    const cwd = join(top, name, "archive");
    cpSync(join(root, "cases-example"), cwd, { recursive: true });
    return cwd;
  };
  const stepsOf = ({ steps }: Job, cwd: string, part = 0): (number | null)[] =>
    steps.map(
      ({ run }) =>
        spawnSync("bash", ["-e", "-c", run.replaceAll(/\$\{\{ matrix\.part \}\}/g, String(part))], {
          cwd,
          env: { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH ?? ""}` },
        }).status,
    );
  const merging = archive("merge");
  const parts = jobs.lint.strategy?.matrix.part ?? [];
  expect(parts).toHaveLength(3);
  for (const part of parts) {
    const cwd = archive(`part-${part}`);
    expect(stepsOf(jobs.lint, cwd, part)).toEqual([0]);
    cpSync(join(cwd, `part-${part}.json`), join(merging, `part-${part}.json`));
  }
  const whole = carcase(["lint", "--format", "json", "."], { cwd: archive("whole") });
  expect(stepsOf(jobs.merge, merging)).toEqual([whole.code]);
  expect(readFileSync(join(merging, "carcase.json"), "utf8")).toBe(whole.out);
});

it("docs/tables.md describes every column", async () => {
  await expect(tablesPage(tables)).toMatchFileSnapshot("../../docs/tables.md");
});
