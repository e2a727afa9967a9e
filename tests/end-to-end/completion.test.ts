/** `carcase completion`: what the shells that are there make of its scripts, and what a press of the Tab key brings. */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { Terminal } from "../interview/terminal.ts";
import { carcase, root, wide } from "./run.ts";

const isThere = (program: string): boolean => spawnSync("sh", ["-c", `command -v ${program}`]).status === 0;
const folder = temporaryFolder();
const script = (shell: string): string => join(folder, `carcase.${shell}`);
for (const shell of ["bash", "zsh", "fish"]) writeFileSync(script(shell), carcase(["completion", shell]).out);
mkdirSync(join(folder, "bin"));
symlinkSync(join(root, "bin/carcase.js"), join(folder, "bin/carcase"));
const env = { ...process.env, HOME: folder, PATH: `${folder}/bin:${process.env.PATH}` };
const inExample = { cwd: join(root, "cases-example"), env, encoding: "utf8" } as const;

/** What each shell offers for a line whose last word is being typed, by its own means. */
const ask: Record<string, (line: string) => string[]> = {
  bash: (line) => {
    const asked = `. "$0"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _carcase; printf '%s\\n' "\${COMPREPLY[@]}"`;
    const words = line.split(" ").flatMap((word) => word.split(/(?<==)|(?==)/));
    return lines(spawnSync("bash", ["-c", asked, script("bash"), ...words], inExample).stdout);
  },
  fish: (line) => {
    const asked = `source ${script("fish")}; complete -C $argv[1]`;
    const out = spawnSync("fish", ["-c", asked, line], inExample).stdout;
    return lines(out).map((one) => one.split("\t")[0]?.replace(/^--\w+=/, "") ?? "");
  },
};
const lines = (text: string): string[] => text.split("\n").filter((line) => line !== "");

describe("carcase completion", () => {
  it.each(["bash", "zsh", "fish"])("writes what %s can read", (shell) => {
    expect(carcase(["completion", shell]).code).toBe(0);
  });

  it.for(["bash", "zsh", "fish"])("%s finds no fault in it", (shell, { skip }) => {
    skip(!isThere(shell), `${shell} is not on this machine`);
    expect(spawnSync(shell, ["-n", script(shell)], { encoding: "utf8" })).toMatchObject({
      status: 0,
      stderr: "",
    });
  });

  it("offers the formats that each command takes", () => {
    for (const command of ["lint", "score", "herd", "measure", "agree", "compare", "explain", "schema"]) {
      const [, said = ""] = /there are (.*)/.exec(carcase([command, "--format", "no"]).err) ?? [];
      const [, offered = ""] =
        new RegExp(`"/${command} --format"\\) list="(.*?)"`).exec(carcase(["completion", "bash"]).out) ?? [];
      expect(offered.split(" ").sort(), command).toEqual(said.split(", ").sort());
    }
  });

  it("says which shells there are", () => {
    expect(carcase(["completion", "fisch"])).toMatchObject({ code: 2, out: "" });
    expect(carcase(["completion", "fisch"]).err).toContain("Did you mean fish?");
  });

  describe.each(["bash", "fish"].filter(isThere))("in %s", (shell) => {
    const offered = (line: string): string[] => ask[shell]?.(line) ?? [];

    it("completes commands, options, choices, rules, scales and names of cases", () => {
      expect(offered("carcase li")).toEqual(["lint"]);
      expect(offered("carcase plan ch")).toEqual(["choose"]);
      expect(offered("carcase plan choose --res")).toEqual(["--reserve"]);
      expect(offered("carcase lint --format j")).toEqual(["json", "junit"]);
      expect(offered("carcase lint --format=j")).toEqual(["json", "junit"]);
      expect(offered("carcase lint --rule skipped-o")).toEqual(["skipped-organ="]);
      expect(offered("carcase herd --scale maff-1978,dott")).toEqual(["maff-1978,dottori-2007"]);
      expect(offered("carcase explain skipped-or")).toEqual(["skipped-organ"]);
      expect(offered("carcase lint alder-2026-03-14-03")).toEqual(["alder-2026-03-14-03"]);
    });

    it("runs nothing of what is typed", () => {
      const trap = join(folder, "ran");
      for (const word of [
        `$(touch ${trap})`,
        `\`touch ${trap}\``,
        `(touch ${trap})`,
        `'x;touch ${trap}'`,
        `a$(touch ${trap}),b`,
      ])
        offered(`carcase lint ${word}`);
      offered(`carcase $(touch ${trap}) herd --scale $(touch ${trap}),m`);
      expect(existsSync(trap)).toBe(false);
    });
  });

  it("completes at a press of the Tab key in zsh", { timeout: 60_000 }, async ({ skip }) => {
    skip(!isThere("zsh"), "zsh is not on this machine");
    const trap = join(folder, "ran-zsh");
    const shell = new Terminal(["-f", "-i"], inExample.cwd, { ...env, PS1: "> ", TERM: "dumb" }, "zsh");
    // By itself zsh runs what it expands at that key; asked to complete only, it must not.
    shell.press(
      `bindkey '^I' complete-word; autoload -Uz compinit; compinit -D -u; . ${script("zsh")}; echo rea''dy\r`,
    );
    await shell.see("ready");
    for (const [typed, becomes] of [
      ["carcase sco\t--matr\t", "score --matrix"],
      ["carcase plan ch\t--res\t", "choose --reserve"],
      ["carcase lint --format=js\t", "--format=json"],
      ["carcase herd --scale maff-1978,dott\t", "maff-1978,dottori-2007"],
      ["carcase explain skipped-or\t", "skipped-organ"],
      ["carcase lint sorrel-2026-05-12\t", "sorrel-2026-05-12-03"],
      [`carcase lint $(touch ${trap})\t`, "$(touch"],
    ] as const) {
      shell.press(typed);
      await shell.show(becomes);
      shell.press("\u0003");
      await shell.see(">");
    }
    shell.kill();
    expect(existsSync(trap)).toBe(false);
  });

  // util-linux has the program `script`, which gives a program a terminal.
  it.runIf(isThere("bash") && spawnSync("script", ["--version"]).stdout?.includes("util-linux"))(
    "completes at a press of the Tab key",
    async () => {
      const shell = spawn("script", ["-qfec", "bash --norc --noprofile -i", "/dev/null"], {
        ...inExample,
        env: { ...env, PS1: "> ", TERM: "dumb", HISTFILE: "" },
      });
      shell.stdin?.write(`. ${script("bash")}; echo rea''dy\n`);
      await shown(shell, "ready");
      shell.stdin?.write("carcase sco\t--matr\t");
      await shown(shell, "score --matrix ");
      shell.kill();
    },
  );
});

/** Waits until a program has written a text. */
function shown(child: ChildProcess, text: string): Promise<void> {
  return new Promise((done, fail) => {
    let all = "";
    child.stdout?.on("data", (some) => {
      all += some;
      if (all.includes(text)) done();
    });
    child.once("exit", () => fail(new Error(`it ended without ${text}: ${all}`)));
  });
}

describe("the name of a case", () => {
  const cwd = join(root, "cases-example");

  it("stands for its file", () => {
    const named = carcase(["lint", "alder-2026-03-14-03"], { cwd });
    expect(named).toEqual(carcase(["lint", "alder-farm/2026-03-14/pig-03.yaml"], { cwd }));
    expect(named.out).toContain("1 case: ");
    expect(carcase(["explain", "alder-2026-03-14-03"], { cwd })).toMatchObject({ code: 0, err: "" });
  });

  it("is found however it is written, and where the file alone has one", () => {
    const archive = temporaryFolder();
    const files = {
      "carcase.yaml": "format: 1\n",
      "a/one.yaml": 'format: 1\n"case" : "rowan-1"\npig: {tag: "1"}\n',
      "b/two.yaml": "{format: 1, case: 'rowan-2', pig: {tag: '2'}}\n",
      "c/three.yaml": "format: 1\npig: {tag: '3'}\ncase:\n  rowan-3\n",
      "d/rowan-4.yaml": "format: 1\npig: {tag: '4'}\nselection: {basis: random}\n",
      "e/other.yaml": "format: 1\ncase: elm-1\nnote: as in rowan-5\npig: {tag: '5'}\n",
    };
    put(archive, files);
    const names = [1, 2, 3, 4].map((number) => `rowan-${number}`);
    expect(carcase(["names-of-cases", "rowan"], { cwd: archive }).out.split("\n")).toEqual([...names, ""]);
    expect(carcase(["names-of-cases", ""], { cwd: archive }).out).toBe(`${[...names, "elm-1"].join("\n")}\n`);
    for (const name of [...names, "rowan-5", "rowan"])
      expect(
        carcase(["lint", name], { cwd: archive, env: wide }).err.includes(`no case at "${name}"`),
        name,
      ).toBe(!names.includes(name));
  });

  it("is not looked for outside an archive", () => {
    const home = temporaryFolder();
    writeFileSync(join(home, "pig.yaml"), "format: 1\ncase: a-1\npig: {tag: '1'}\n");
    expect(carcase(["names-of-cases", "a"], { cwd: home })).toMatchObject({ code: 0, out: "" });
    expect(carcase(["lint", "a-1"], { cwd: home }).code).toBe(2);
    writeFileSync(join(home, "farm.yaml"), "format: 1\nfarm: a\n");
    expect(carcase(["names-of-cases", "a"], { cwd: home }).out).toBe("a-1\n");
  });
});
