/** The page of the manual says what --help says, and is shown without a fault. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { carcase, root } from "./run.ts";

const { man } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
// npm shows pages of a list only.
const page = join(root, man[0]);
/** The words of a text, however it is laid out. */
const words = (text: string): string =>
  text
    .replaceAll(/\\&|^\.(?:TP|B|PP|SS|SH|br|nf|fi)\b/gm, "")
    .replaceAll("\\-", "-")
    .replaceAll("\\(dq", '"')
    .replaceAll(/\s+/g, " ");
const written = words(readFileSync(page, "utf8"));

it.each(["lint", "herd", "plan choose", "compare", "completion"])(
  "has all that %s --help says",
  (command) => {
    const { out } = carcase([...command.split(" "), "--help"], { env: { COLUMNS: "10000" } });
    const said = out
      .split("\n")
      .filter((line) => !/^Usage: |^(?:Arguments|Options|Commands):$|^$/.test(line));
    expect(said.length).toBeGreaterThan(5);
    for (const line of said) expect(written).toContain(words(line).trim());
  },
);

it.runIf(spawnSync("man", ["--version"]).status === 0)("is shown without a warning", () => {
  const env = { ...process.env, MANWIDTH: "80", LC_ALL: "C" };
  const shown = spawnSync("man", ["-l", "--warnings", page], { env, encoding: "utf8" });
  expect(shown).toMatchObject({ status: 0, stderr: "" });
  expect(shown.stdout).toContain("--stdin-filename <file>");
});
