/** A machine that has Node and nothing else: the packed package, a home and a path of its own. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, writeFileSync } from "node:fs";
import { homedir, tmpdir } from "node:os";
import { basename, delimiter, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";

/** The section of docs/install.md that takes a network or what npm has kept, and a while. */
export const fromClone = "From a clone";

export const root = fileURLToPath(new URL("../..", import.meta.url));

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Machine {
  readonly home: string;
  /** A new folder: a git repository that holds the packed file. */
  place(): string;
  /** Runs lines as they are printed, up to the first that fails. */
  run(lines: string, cwd: string): Ran;
  /** The same, where all must go well. */
  runs(lines: string, cwd: string): string;
}

/** @param more settings for npm; without them it may not fetch anything */
export function machine(more: Readonly<Record<string, string>> = { offline: "true" }): Machine {
  const folder = temporaryFolder();
  const [home, global] = ["home", "global"].map((name) => join(folder, name)) as [string, string];
  for (const each of [home, global]) mkdirSync(each);
  const file = packed();
  writeFileSync(
    join(home, ".gitconfig"),
    "[user]\nname = H. Marlow\nemail = marlow@example.org\n[init]\ndefaultBranch = main\n",
  );
  const npm = {
    prefix: global,
    globalconfig: process.env.npm_config_globalconfig,
    userconfig: process.env.npm_config_userconfig,
    cache: process.env.npm_config_cache ?? join(homedir(), ".npm"),
    update_notifier: "false",
    ...more,
  };
  // What npm says of the command that runs the tests is not meant for the commands under test; where it fetches from, is.
  const inherited = Object.entries(process.env).filter(
    ([name]) =>
      !/^(npm_|INIT_CWD|NODE_|GIT_|FORCE_COLOR|COLUMNS|CI$)/i.test(name) ||
      /^npm_config_(registry|.*proxy|cafile)$/i.test(name),
  );
  const env = {
    ...Object.fromEntries(inherited),
    ...Object.fromEntries(Object.entries(npm).map(([key, value]) => [`npm_config_${key}`, value])),
    HOME: home,
    NO_COLOR: "1",
    PATH: [join(global, "bin"), dirname(process.execPath), process.env.PATH].join(delimiter),
  };
  const run = (lines: string, cwd: string): Ran => {
    const { status, stdout, stderr } = spawnSync("sh", ["-ec", lines], { cwd, env, encoding: "utf8" });
    return { code: status, out: stdout, err: stderr };
  };
  return {
    home,
    run,
    runs(lines, cwd) {
      const ran = run(lines, cwd);
      expect(ran.code, `${lines}\n${ran.out}\n${ran.err}`).toBe(0);
      return ran.out;
    },
    place() {
      const place = mkdtempSync(join(folder, "place-"));
      cpSync(file, join(place, basename(file)));
      expect(run("git init --quiet", place).code).toBe(0);
      return place;
    },
  };
}

let made: string | undefined;

/** The package as `npm pack` makes it of the checkout, which was built before the tests; once for all files of a worker. */
function packed(): string {
  if (made !== undefined) return made;
  const folder = mkdtempSync(join(tmpdir(), "packed-"));
  const { status, stderr } = spawnSync("npm", ["pack", "--ignore-scripts", "--pack-destination", folder], {
    cwd: root,
    encoding: "utf8",
  });
  expect(status, stderr).toBe(0);
  const [name = ""] = readdirSync(folder);
  made = join(folder, name);
  return made;
}
