/**
 * From a clone: what an unbuilt one says, the section of docs/install.md as printed, and what a hook runner does with the
 * repository. Packages come from what npm has kept, or over the network.
 */
import { readdirSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { blocksOf } from "../docs/blocks.ts";
import { fromClone, machine, root } from "./machine.ts";

const desk = machine({ prefer_offline: "true" });
const origin = "https://git.example.org/carcase";
const [block] = blocksOf("docs/install.md").filter(
  ({ heading, info }) => heading === fromClone && info === "sh",
);
const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
let place = "";
let clone = "";

beforeAll(() => {
  place = desk.place();
  clone = join(place, "carcase");
  // The address that the pages name leads to the checkout as it stands, committed or not.
  desk.runs(
    `git init --quiet --bare origin
    git --git-dir=origin --work-tree="${root}" add --all
    git --git-dir=origin --work-tree="${root}" commit --quiet --message Now
    git --git-dir=origin tag "v${version}"
    git config --global url."${place}/origin".insteadOf "${origin}"`,
    place,
  );
});

describe("an unbuilt clone", () => {
  const command = (folder: string): string => `npm --prefix ${JSON.stringify(folder)} run setup`;

  it("says in one line what to do, also where it is linked", () => {
    desk.runs(`git clone --quiet ${origin} unbuilt`, place);
    const unbuilt = join(place, "unbuilt");
    symlinkSync(join(unbuilt, "bin/carcase.js"), join(place, "linked"));
    for (const program of ["unbuilt/bin/carcase.js", "linked"])
      expect(desk.run(`node ${program} lint .`, place)).toEqual({
        code: 2,
        out: "",
        err: `carcase is not built yet. Run this once: ${command(unbuilt)}\n`,
      });
    expect(command(unbuilt).split(" ").slice(-2).join(" ")).toBe("run setup");
    const { scripts } = JSON.parse(readFileSync(join(unbuilt, "package.json"), "utf8"));
    expect(scripts).toHaveProperty("setup");
  });

  it("that npm fetched without building says so, too", () => {
    desk.runs("mkdir -p half/bin && cp unbuilt/bin/* half/bin/", place);
    const { code, err } = desk.run("node half/bin/carcase.js", place);
    expect(code).toBe(2);
    expect(err).toMatch(/^carcase is not whole in "[^"\n]*"\. Install it anew from a packed file[^\n]*\n$/);
  });

  it("asks for the Node that package.json asks for", () => {
    const { engines } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
    const old = (of: string) =>
      desk.run(
        `node --import 'data:text/javascript,Object.defineProperty(process.versions,"node",{value:"${of}"})' "${root}/bin/carcase.js" --version`,
        place,
      );
    expect(engines.node).toBe(">=20.19");
    for (const of of ["18.20.8", "20.18.3"])
      expect(old(of)).toEqual({
        code: 2,
        out: "",
        err: `carcase needs Node 20.19 or later; this is Node ${of}. Get a newer one: https://nodejs.org\n`,
      });
    for (const of of ["20.19.0", "22.0.0"]) expect(old(of)).toMatchObject({ code: 0, err: "" });
  });
});

/**
 * Gives a fresh clone what `npm run setup` made of this one. Making it from nothing is what `npm test` of a fresh clone begins
 * with; done twice more here it took a tenth of all tests.
 */
function setUp(of: string): void {
  for (const made of ["dist", "src/generated", "src/lint/rules/index.ts", "src/schemas"])
    desk.runs(`rm -rf "${of}/${made}" && cp -a "${root}/${made}" "${of}/${made}"`, place);
  // Linked, as there is much of it, but for what npm and the build write anew where it stands.
  const [from, to] = [root, of].map((folder) => join(folder, "node_modules"));
  desk.runs(
    `cp -al "${from}" "${to}"
    for own in .package-lock.json .cache; do rm -rf "${to}/$own" && cp -a "${from}/$own" "${to}/$own"; done`,
    place,
  );
}

it("puts carcase on the path as printed", () => {
  const [clones = "", ...builds] = (block?.body ?? "").split("\n");
  desk.runs(clones, place);
  setUp(clone);
  desk.runs(builds.join("\n"), place);
  // The clone may go then.
  desk.runs("mv carcase elsewhere", place);
  expect(desk.runs("carcase --version", place)).toBe(`${version}\n`);
  desk.runs("mv elsewhere carcase", place);
});

it("is packed and installed by a hook runner, which takes all that npm pack prints for the name", () => {
  const [hooks] = parse(readFileSync(join(root, ".pre-commit-hooks.yaml"), "utf8"));
  expect(hooks.language).toBe("node");
  desk.runs(
    `npm uninstall --global carcase
    git -C carcase checkout --quiet "v${version}"
    cd carcase
    npm install --include=dev --include=prod --ignore-prepublish --no-progress --no-save
    npm install --global "$(npm pack)"`,
    place,
  );
  expect(desk.runs("carcase --version", place)).toBe(`${version}\n`);
  expect(readdirSync(clone).filter((name) => name.endsWith(".tgz"))).toEqual([`carcase-${version}.tgz`]);
});
