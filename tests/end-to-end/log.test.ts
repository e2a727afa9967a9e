/** In the log of a runner nothing that comes from files or arguments is a command, and a terminal gets nothing to obey. */
import { execFileSync } from "node:child_process";
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { withoutCommands } from "../../src/words/log-commands.ts";
import { temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { carcase, root } from "./run.ts";

/** As the runners read a log, after their published sources: GitHub's in both forms, Azure's, GitLab's; TeamCity's anywhere. */
const commands = [
  /^\s*::\w[^:]*::/,
  /##\[[^\]]*\]/,
  /##vso\[[^\]]*\]/,
  /##teamcity\[/,
  /section_(?:start|end):\d+:[\w.-]+(?:\[[^\]]*\])?\r\u001b\[0K/,
];
const obeyed = (log: string): string[] =>
  log.split(/\r?\n|\r/).filter((line) => commands.some((command) => command.test(line)));

describe("a text in a log", () => {
  every(
    "is no command",
    [
      ["::error file=x::y.yaml", "\\::error file=x::y.yaml"],
      ["  \t::set-output name=x::y", "  \t\\::set-output name=x::y"],
      ["\u001b[1m::error::bold\u001b[22m", "\u001b[1m\\::error::bold\u001b[22m"],
      ["a\n::error::b\r\n::error::c", "a\n\\::error::b\r\n\\::error::c"],
      ["12 | ##[error]a", "12 | ##\\[error]a"],
      ["a ##vso[task.complete result=Failed;]", "a ##vso\\[task.complete result=Failed;]"],
      ["##teamcity[buildStop]", "##teamcity\\[buildStop]"],
      // Plain texts stay.
      ["a ::error::b", "a ::error::b"],
      ["C::D, [a], # [b], ##", "C::D, [a], # [b], ##"],
    ] as const,
    ([text, shown]) => {
      expect(withoutCommands(text)).toBe(shown);
      expect(withoutCommands(shown)).toBe(shown);
      expect(obeyed(shown)).toEqual([]);
    },
  );
});

/** A visit with a case whose name, id, note and finding are commands. */
function visit(): string {
  const cwd = temporaryFolder();
  cpSync(join(root, "tests/fixtures/birch-farm/2026-04-20"), cwd, { recursive: true });
  const text = readFileSync(join(cwd, "pig-01.yaml"), "utf8");
  writeFileSync(
    join(cwd, "::error file=x::y.yaml"),
    text
      .replace(/^case: .*/m, 'case: "::notice::z"')
      .replace(
        /^pig: /m,
        "note: |2\n    ::warning::in a note\n    ##[error]another\n    ##vso[task.complete]x\npig: ",
      )
      .replace("sex: female", "sex: Female")
      .replace('tag: "901"', 'tag: "##[error]901"'),
  );
  writeFileSync(join(cwd, "::debug::.yaml"), text.replace(/^case: .*/m, 'case: "::notice::z"'));
  writeFileSync(join(cwd, "::error::broken.yaml"), "case: [\n");
  return cwd;
}

describe("commands in file names, ids and notes", () => {
  every(
    "are broken on both streams",
    [
      ["lint", "."],
      ["lint", "-q", "."],
      ["lint", "--format", "json", "."],
      ["lint", "--format", "sarif", "."],
      ["lint", "--format", "junit", "."],
      ["lint", "--format", "gitlab", "."],
      ["lint", "--fix", "--dry-run", "."],
      ["lint", "--fix", "."],
      ["lint", "::error file=x::y.yaml", "::nothing::"],
      ["score", "."],
      ["score", "--matrix", "."],
      ["score", "--format", "csv", "."],
      ["score", "--format", "json", "."],
      ["herd", "."],
      ["herd", "--format", "markdown", "."],
      ["compare", "--between", "groups", "."],
      ["measure", "."],
      ["measure", "::error::x.svg"],
      ["agree", "::error::x.csv"],
      ["explain", "\n::error::x"],
      ["plan", "choose", "::error::x", "--pigs", "2"],
      ["lint", "\n::error::x"],
      ["lint", "--x\n::error::y"],
      ["\n::error::x"],
    ],
    (args) => {
      const { out, err } = carcase(args, { cwd: visit() });
      expect(out + err).toMatch(/::|error|case/);
      expect(obeyed(out)).toEqual([]);
      expect(obeyed(err)).toEqual([]);
      if (args.length > 2) return;
      const coloured = carcase(args, { cwd: visit(), env: { FORCE_COLOR: "1" } });
      expect(obeyed(coloured.out + coloured.err)).toEqual([]);
    },
    (args) => args.join(" "),
  );

  it("stand in the annotations of GitHub, which are commands of ours alone", () => {
    const { out, err } = carcase(["lint", "--format", "github", "."], { cwd: visit() });
    const lines = out.split("\n").filter((line) => line !== "");
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines.slice(0, -1))
      expect(line).toMatch(/^::(?:error|warning|notice) file=\S* ?[^:]*::/);
    expect(obeyed(err)).toEqual([]);
  });

  it("stay as they are in a diff that is written to a file, so that it can be applied", () => {
    for (const toFile of [true, false]) {
      const cwd = visit();
      const args = ["lint", "--fix", "--dry-run", "."];
      const stdout = join(cwd, "fix.diff");
      if (toFile) carcase([...args, "-o", stdout], { cwd });
      else carcase(args, { cwd, stdout });
      expect(readFileSync(stdout, "utf8")).toContain("\n     ::warning::in a note\n");
      execFileSync("git", ["apply", "fix.diff"], { cwd });
    }
  });
});

describe("what was typed", () => {
  const hidden = "\u001b[31mx\u0007\n\u202e";
  every(
    "is shown with codes for what a terminal would obey",
    [
      [hidden],
      [`--${hidden}`],
      ["lint", `--${hidden}`],
      ["lint", `--x=${hidden}`],
      ["plan", hidden],
      ["plan", "choose", hidden, "--pigs", "2"],
      ["help", hidden],
      ["lint", hidden],
      ["lint", "--config", hidden],
      ["lint", "--format", hidden],
      ["lint", "--also", hidden],
      ["lint", "--also", `json=no/${hidden}`],
      ["lint", "--only", hidden],
      ["lint", "--rule", `${hidden}=note`],
      ["lint", "--baseline", hidden],
      ["lint", "--write-baseline", `no/${hidden}`],
      ["lint", "--fail-on", hidden],
      ["lint", "-o", `no/${hidden}`],
      ["lint", "-", "--stdin-filename", hidden],
      ["score", "--scale", hidden],
      ["herd", "--by", hidden],
      ["herd", "--indicator", hidden],
      ["compare", "--where", hidden],
      ["compare", "--where", `group=${hidden}`],
      ["agree", hidden],
      ["agree", `${hidden}.csv`],
      ["measure", `${hidden}.svg`],
      ["explain", hidden],
      ["plan", "say", "--pigs", hidden],
    ],
    (args) => {
      const env = { COLUMNS: hidden, SOURCE_DATE_EPOCH: hidden, CI: hidden, CARCASE_DEBUG: hidden };
      const { code, out, err } = carcase(args, { env, cwd: temporaryFolder(), input: "case: x\n" });
      expect(code === 2 || args[0] === "help" || args.includes("-"), err).toBe(true);
      expect(out + err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f\u202e]/);
    },
    (args) => JSON.stringify(args),
  );

  it("is told what was meant", () => {
    expect(carcase(["lint", "--fromat", "json"]).err).toBe(
      "error: unknown option '--fromat'\n(Did you mean --format?)\n(carcase --help shows what can be asked)\n",
    );
    expect(carcase(["lint", `--fromat\n(Did you mean --x?)\n`]).err).toBe(
      "error: unknown option '--fromat\\u{a}(Did you mean --x?)\\u{a}'\n(carcase --help shows what can be asked)\n",
    );
  });
});
