/** Signing off and looking again, as a veterinarian types it. */
import { spawnSync } from "node:child_process";
import { chmodSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { folderInTurns, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { carcase, wide } from "./run.ts";

const turn = folderInTurns();
let folder = "";
const env = { ...wide, SOURCE_DATE_EPOCH: "1773500000" };
const run = (...args: string[]) => carcase(args, { cwd: folder, env });
const text = (name: string): string => readFileSync(join(folder, name), "utf8");
const edit = (name: string, change: (before: string) => string): void =>
  writeFileSync(join(folder, name), change(text(name)));
const heavier = (before: string): string => before.replace("17 kg", "18 kg");

beforeEach(() => {
  // What a test writes over must be written anew for the next one.
  folder = turn({});
  folder = turn({
    "a/visit.yaml": "format: 1\nvisit: a\ndate: 2026-03-14\n",
    "a/pig-01.yaml": smallCase("a-01", "pig: {sex: female, weight: 17 kg}\nphotos: [ear.jpg]\n"),
    "a/pig-02.yaml": smallCase("a-02", "pig: {sex: female, weight: 17 kg}\n"),
    "a/ear.jpg": "JPEG",
  });
});

const by = ["--by", "A. Berg"] as const;

describe("carcase seal", () => {
  it("signs a visit with its cases, once, and leaves alone what is signed", () => {
    const first = run("seal", "a", ...by);
    expect([first.code, first.out]).toEqual([
      0,
      "sealed a/pig-01.yaml\nsealed a/pig-02.yaml\nsealed a/visit.yaml\n",
    ]);
    expect(first.err).toContain("of the linter stand open in what was signed");
    const sealed = text("a/pig-01.yaml");
    const again = run("seal", "a", "--by", "B. Berg");
    expect([again.code, again.out, again.err]).toEqual([
      0,
      "",
      "carcase: there is nothing to sign: no record changed since it was signed off\n",
    ]);
    expect(text("a/pig-01.yaml")).toBe(sealed);
  });

  it("signs one case, and not the visit that it belongs to", () => {
    expect(run("seal", "a/pig-02.yaml", ...by).out).toBe("sealed a/pig-02.yaml\n");
    expect(text("a/visit.yaml")).not.toContain("seals");
    expect(run("seal", "a/visit.yaml", ...by).out).toBe("sealed a/visit.yaml\n");
  });

  it("shows what it would write", () => {
    const { code, out } = run("seal", "a/pig-02.yaml", ...by, "--dry-run");
    expect(code).toBe(1);
    expect(out).toContain("+seals:\n+  - by: A. Berg\n");
    expect(text("a/pig-02.yaml")).not.toContain("seals");
  });

  it.each<[string, string[], string]>([
    ["no name", ["a"], 'say who signs: --by "A. Berg"'],
    ["no record", [...by], "name the case, such as carcase seal"],
    ["standard input", ["-", ...by], "name the file; a seal is not written into standard input"],
    ["a reason without a change", ["a", ...by, "--because", "x"], "--because goes with --amend"],
    ["a change without a reason", ["a", ...by, "--amend"], "--amend: say why it was changed"],
    [
      "a key that is not there",
      ["a", ...by, "--sign", "none"],
      "--sign none: nothing was signed; ssh-keygen says",
    ],
  ])("refuses %s", (_, args, message) => {
    const { code, out, err } = run("seal", ...args);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(message);
    expect(text("a/pig-01.yaml")).not.toContain("seals");
  });

  it("signs nothing where one record cannot be signed", () => {
    edit("a/pig-02.yaml", (before) => before.replace("female", "Female"));
    const { code, out, err } = run("seal", "a", ...by);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain('pig.sex: "Female" is not one of');
    expect(err).toContain("nothing was sealed; put right what is said above first");
    folder = turn({ "a/pig-01.yaml": smallCase("a-01", "photos: [ear.jpg]\n") });
    expect(run("seal", "a", ...by).err).toContain(
      "a/pig-01.yaml names ear.jpg, which cannot be sealed: there is no such file",
    );
    expect(text("a/pig-01.yaml")).not.toContain("seals");
  });

  it("does not write through a link that leads out", () => {
    const outside = join(temporaryFolder(), "pig.yaml");
    writeFileSync(outside, smallCase("o-1"));
    symlinkSync(outside, join(folder, "a/pig-09.yaml"));
    expect(run("seal", "a/pig-09.yaml", ...by).code).toBe(2);
    expect(readFileSync(outside, "utf8")).toBe(smallCase("o-1"));
  });
});

describe("a sealed record that changed", () => {
  it("is told by lint and verify until somebody signs the change", () => {
    run("seal", "a", ...by);
    expect(run("verify", "a")).toMatchObject({
      code: 0,
      out: expect.stringContaining("3 records: 3 as signed."),
    });
    edit("a/pig-01.yaml", heavier);
    expect(run("lint", "--only", "sealed-record-changed", "a")).toMatchObject({
      code: 1,
      out: expect.stringContaining("changed since A. Berg signed it on 2026-03-14."),
    });
    expect(run("verify", "a")).toMatchObject({
      code: 1,
      out: expect.stringContaining(
        "a/pig-01.yaml\n  broken: it was changed since A. Berg signed it on 2026-03-14\n",
      ),
    });
    const refused = run("seal", "a", "--by", "C. Dahl");
    expect([refused.code, refused.out]).toEqual([2, ""]);
    expect(refused.err).toContain("--amend --because TEXT signs the change");
    const amended = run("seal", "a", "--by", "C. Dahl", "--amend", "--because", "scale read anew");
    expect([amended.code, amended.out]).toEqual([0, "sealed a/pig-01.yaml\n"]);
    expect(run("lint", "--only", "sealed-record-changed", "a").code).toBe(0);
    const { code, out } = run("verify", "a");
    expect(code).toBe(0);
    expect(out).toContain("a/pig-01.yaml: 2026-03-14, C. Dahl: scale read anew\n");
    expect(out).toContain("3 records: 2 as signed and 1 amended.");
  });

  it("is told although an alarm is open", () => {
    run("seal", "a", ...by);
    edit("a/pig-01.yaml", (before) =>
      before.replace("photos:", "alarm_check: {before_knife: {vesicles: seen}}\nphotos:"),
    );
    expect(run("lint", "a/pig-01.yaml").out).toContain("[sealed-record-changed]");
  });

  it("is told by verify where a photograph did, or is gone", () => {
    run("seal", "a", ...by);
    writeFileSync(join(folder, "a/ear.jpg"), "another");
    expect(run("verify", "a", "-q")).toMatchObject({
      code: 1,
      out: "a/pig-01.yaml\n  broken: ear.jpg: it is not the file that was sealed\n",
    });
    expect(run("seal", "a/pig-01.yaml", ...by)).toMatchObject({
      code: 2,
      err: expect.stringContaining("a/pig-01.yaml: ear.jpg was changed since A. Berg signed it"),
    });
    run("seal", "a/pig-01.yaml", ...by, "--amend", "--because", "cut to the ear");
    expect(run("verify", "a").code).toBe(0);
    folder = turn({ "a/pig-01.yaml": text("a/pig-01.yaml") });
    expect(run("verify", "a", "-q").out).toBe("a/pig-01.yaml\n  broken: ear.jpg: there is no such file\n");
  });
});

describe("carcase verify", () => {
  it("counts what nobody signed, and asks for it with --all", () => {
    run("seal", "a/pig-01.yaml", ...by);
    expect(run("verify", "a")).toMatchObject({
      code: 0,
      out: "3 records: 1 as signed and 2 not sealed.\nSignatures: 1 unsigned.\n",
    });
    expect(run("verify", "a", "--all")).toMatchObject({
      code: 1,
      out: expect.stringContaining("Not sealed\n  a/pig-02.yaml\n  a/visit.yaml\n"),
    });
    expect(run("verify", "a/pig-01.yaml", "--all").code).toBe(0);
  });

  it("gives programs the same", () => {
    run("seal", "a", ...by);
    edit("a/pig-02.yaml", heavier);
    run("seal", "a", ...by, "--amend", "--because", "scale read anew");
    const { records } = JSON.parse(run("verify", "a", "--format", "json").out);
    expect(records.map(({ file, state }: { file: string; state: string }) => [file, state])).toEqual([
      ["a/pig-01.yaml", "sealed"],
      ["a/pig-02.yaml", "amended"],
      ["a/visit.yaml", "sealed"],
    ]);
    expect(records[1]).toEqual({
      file: "a/pig-02.yaml",
      id: "a-02",
      kind: "case",
      state: "amended",
      signature: "none",
      signer: null,
      seals: [
        { by: "A. Berg", at: expect.stringMatching(/^2026-03-14T/), because: null },
        { by: "A. Berg", at: expect.stringMatching(/^2026-03-14T/), because: "scale read anew" },
      ],
      wrong: [],
    });
  });

  it("is exit code 2 for what cannot be read", () => {
    writeFileSync(join(folder, "a/pig-02.yaml"), "format: 1\ncase: [\n");
    expect(run("verify", "a").code).toBe(2);
    expect(run("verify", "a", "--signers", "none")).toMatchObject({
      code: 2,
      err: expect.stringContaining("--signers: there is no file none"),
    });
  });
});

const keys = temporaryFolder();
const made = ["berg", "dahl"].map((name) =>
  spawnSync("ssh-keygen", ["-q", "-t", "ed25519", "-N", "", "-C", name, "-f", join(keys, name)]),
);

describe.skipIf(made.some(({ status }) => status !== 0))("a signature", () => {
  const signers = join(keys, "signers");
  const allow = (name: string, options = ""): void =>
    writeFileSync(
      signers,
      `${name}@example.org ${options} ${readFileSync(join(keys, `${name}.pub`), "utf8")}`,
    );
  const signed = (...args: string[]) => run("seal", "a", ...by, "--sign", join(keys, "berg"), ...args);
  const signature = (): string => {
    const { records } = JSON.parse(
      run("verify", "a/pig-01.yaml", "--format", "json", "--signers", signers).out,
    );
    return records[0].signature;
  };

  beforeEach(() => chmodSync(join(keys, "berg"), 0o600));

  it("is one of those who may sign, and of what is sealed", () => {
    expect(signed().code).toBe(0);
    expect(run("verify", "a").out).toContain("Signatures: 3 not checked: --signers says who may sign.");
    allow("berg", 'namespaces="carcase-seal"');
    expect(run("verify", "a", "--signers", signers)).toMatchObject({
      code: 0,
      out: "3 records: 3 as signed.\nSignatures: 3 by those who may sign.\n",
    });
    expect(signature()).toBe("right");
    allow("dahl");
    expect(run("verify", "a", "--signers", signers, "-q")).toMatchObject({
      code: 1,
      out: expect.stringContaining(
        "a/pig-01.yaml\n  broken: the key that signed is none of those that may sign\n",
      ),
    });
    expect(signature()).toBe("wrong");
  });

  it("made for something else is none", () => {
    expect(signed().code).toBe(0);
    allow("berg", 'namespaces="git"');
    expect(run("verify", "a", "--signers", signers).code).toBe(1);
  });

  it("does not outlive a change, which is signed anew", () => {
    allow("berg");
    signed();
    edit("a/pig-01.yaml", heavier);
    expect(run("verify", "a", "--signers", signers).code).toBe(1);
    expect(signed("--amend", "--because", "scale read anew").code).toBe(0);
    expect(run("verify", "a", "--signers", signers).code).toBe(0);
    // The fingerprint of a forger fits what the forger wrote; the signature that is taken over does not.
    edit("a/pig-02.yaml", heavier);
    const [, old = ""] = /( {4}signature: [\s\S]*)/.exec(text("a/pig-02.yaml")) ?? [];
    run("seal", "a/pig-02.yaml", ...by, "--amend", "--because", "nothing");
    edit("a/pig-02.yaml", (before) => before + old);
    expect(run("verify", "a/pig-02.yaml").code).toBe(0);
    expect(run("verify", "a/pig-02.yaml", "--signers", signers, "-q").out).toContain(
      "broken: the signature is not one of what was sealed",
    );
  });

  it("is asked of every seal, where it is said who may sign", () => {
    allow("berg");
    run("seal", "a", ...by);
    expect(run("verify", "a/pig-01.yaml", "--signers", signers)).toMatchObject({
      code: 1,
      out: expect.stringContaining("broken: it has no signature"),
    });
  });

  it("of a key that is no longer valid was so on the day", () => {
    signed();
    allow("berg", 'valid-before="20260401"');
    expect(run("verify", "a", "--signers", signers).code).toBe(0);
    allow("berg", 'valid-before="20260301"');
    expect(run("verify", "a", "--signers", signers).code).toBe(1);
  });
});
