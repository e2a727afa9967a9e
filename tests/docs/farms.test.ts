/** The practice of docs/compare.md: too many files to lie among the examples, so they are made here, and the page shows what the program says. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { examplePractice, practiceOf } from "../compare/practice.ts";
import { carcase, root } from "../end-to-end/run.ts";
import { blocksOf, fence, played, textOf } from "./blocks.ts";

const page = "docs/compare.md";
const isOurs = (body: string): boolean => body.startsWith("$ carcase compare --between farms ");

const cwd = temporaryFolder();
put(
  cwd,
  Object.fromEntries(
    Object.entries({ "carcase.yaml": { format: 1 }, ...practiceOf(examplePractice) }).map(
      ([name, content]) => [name, JSON.stringify(content)],
    ),
  ),
);
const run = (line: string): string => {
  const { out, err } = carcase(line.split(" ").slice(1), { cwd });
  return out + err;
};

it("the page shows what is said of the practice", () => {
  if (process.env.UPDATE_DOCS !== undefined)
    writeFileSync(
      join(root, page),
      textOf(page).replaceAll(fence, (whole, info, body) =>
        isOurs(body) ? `\`\`\`${info}\n${played(body, run)}\`\`\`` : whole,
      ),
    );
  const [ours, ...more] = blocksOf(page).filter(({ body }) => isOurs(body));
  expect([ours?.info, more.length]).toEqual(["text", 0]);
  expect(ours?.body).toBe(played(ours?.body ?? "", run));
});

it("a scale cannot be ranked, and one farm is not many", () => {
  const scale = carcase(["compare", "--between", "farms", "--scale", "maff-1978", "practice"], { cwd });
  expect([scale.code, scale.out]).toEqual([2, ""]);
  expect(scale.err).toContain("farms are ranked by shares; name an indicator");
  const one = carcase(["compare", "--between", "farms", "practice/birch"], { cwd });
  expect(one.code).toBe(2);
  expect(one.err).toContain("give the folder that holds the farms");
});
