/** `carcase note` writes what was understood into the case, and nothing else. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { carcase, root, wide } from "./run.ts";

const text = `format: 1
case: alder-2026-03-14-03   # unique
protocol: full
pig: {tag: "2217", group: nursery-2, age: 58 d, sex: female}
lymphoid:
  # felt before it was cut
  spleen:
  bronchial_nodes: [{process: enlargement, size: 18 mm}]   # beside the cranial lobe
  tonsil: normal
respiratory:
  lungs:
    consolidation: {left_cranial: 20, left_middle: , right_middle: }
serosa: normal
`;

function noted(note: string, ...options: readonly string[]) {
  const cwd = temporaryFolder();
  put(cwd, { "pig-03.yaml": text });
  const said = carcase(["note", "pig-03.yaml", note, ...options], { cwd });
  return { ...said, after: readFileSync(join(cwd, "pig-03.yaml"), "utf8"), files: readdirSync(cwd) };
}

describe("carcase note", () => {
  it("shows the entry alone, and writes nothing unasked", () => {
    const { code, out, err, after } = noted("lungs consolidation cv 15 % left middle, 10 right middle");
    expect([code, out]).toEqual([
      0,
      `respiratory:
  lungs:
    findings:
      - {process: consolidation, distribution: cranioventral}
    consolidation: {left_middle: 15, right_middle: 10}
`,
    ]);
    expect(err).toBe("carcase: nothing was written; --write puts it into pig-03.yaml\n");
    expect(after).toBe(text);
  });

  it("writes beside what stands there, with its comments and in its order", () => {
    const { code, err, after, files } = noted(
      "spleen enlarged 240 x 50 mm; bronchial nodes congested; lungs consolidation 15 left middle; kidneys left petechiae",
      "--write",
    );
    expect([code, err]).toEqual([0, "carcase: written into pig-03.yaml\n"]);
    expect(after).toMatchInlineSnapshot(`
      "format: 1
      case: alder-2026-03-14-03   # unique
      protocol: full
      pig: {tag: "2217", group: nursery-2, age: 58 d, sex: female}
      lymphoid:
        # felt before it was cut
        spleen:
          - {process: enlargement, size: 240 x 50 mm}
        bronchial_nodes:  # beside the cranial lobe
          - {process: enlargement, size: 18 mm}
          - {process: congestion}
        tonsil: normal
      respiratory:
        lungs:
          consolidation: {left_cranial: 20, left_middle: 15, right_middle: }
      serosa: normal
      urinary:
        kidneys:
          left:
            - {process: petechiae}
      "
    `);
    expect(files).toEqual(["pig-03.yaml"]);
  });

  it.each([
    ["spleen enlarged; tonsil necrosis", "tonsil is normal there"],
    ["spleen enlarged; chest effusion serous 40 ml", "the whole system serosa is normal there"],
    ["spleen enlarged; liver humongous", '"humongous" has no meaning here'],
    ["spleen enlarged; lungs consolidation 30 left cranial", "left_cranial is 20 there already"],
  ])("writes nothing of a note of which a part cannot be: %s", (note, said) => {
    const { code, out, err, after } = noted(note, "--write");
    expect([code, out, after]).toEqual([2, "", text]);
    expect(err).toContain(said);
    expect(Math.max(...err.split("\n").map((line) => line.length))).toBeLessThanOrEqual(120);
    expect(noted(note, "--write", "--partly")).toMatchObject({
      code: 2,
      after: text.replace("  spleen:\n", "  spleen:\n    - {process: enlargement}\n"),
    });
  });

  it("shows the notice of an alarm that rises by it", () => {
    const { code, err, after } = noted("snout vesicles 10 mm", "--write");
    expect(code).toBe(0);
    expect(err).toContain("STOP: this may be a notifiable disease");
    expect(after).toContain("process: vesicle");
  });

  it.each([
    [["note", "pig-04.yaml", "spleen enlarged"], "pig-04.yaml"],
    [["note", "-", "spleen enlarged"], "name the file of the case"],
    [["note", "pig-03.yaml"], "write what you see, such as carcase note pig-03.yaml"],
    [["note", ".", "spleen enlarged"], "name the case, such as carcase note pig-03.yaml"],
  ])("says what is wrong with %j", (args, said) => {
    const cwd = temporaryFolder();
    put(cwd, { "pig-03.yaml": text, "pig-05.yaml": text.replace("-03 ", "-05 ") });
    const { code, out, err } = carcase(args, { cwd });
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(said);
  });
});

describe("record and note without a case", () => {
  const complete = readFileSync(join(root, "cases-example/alder-farm/2026-03-14/pig-01.yaml"), "utf8");
  every(
    "say what to write, with the one case that is not complete",
    [
      [
        ["record"],
        [],
        "name the case, such as carcase record alder-farm/2026-03-14/pig-03.yaml; carcase new makes it",
      ],
      [["record"], ["pig-03"], "name the case; one is not complete yet: carcase record v/pig-03.yaml"],
      [
        ["record"],
        ["pig-04", "pig-03"],
        "such as carcase record v/pig-03.yaml (2 cases are not complete yet)",
      ],
      [["note"], ["pig-03"], 'one is not complete yet: carcase note v/pig-03.yaml "bronchial nodes enlarged'],
      [
        ["note", "spleen enlarged"],
        ["pig-03"],
        'not complete yet: carcase note v/pig-03.yaml "spleen enlarged"',
      ],
      [
        ["note", "v", "spleen enlarged"],
        ["pig-03", "pig-04"],
        'such as carcase note v/pig-03.yaml "spleen enlarged" (2 cases',
      ],
      [
        ["note", "v/pig-03.yaml"],
        ["pig-03"],
        'write what you see, such as carcase note v/pig-03.yaml "bronchial',
      ],
    ] as const,
    ([args, open, says]) => {
      const cwd = temporaryFolder();
      for (const name of open) put(cwd, { [`v/${name}.yaml`]: text.replace("03   #", `${name}   #`) });
      if (open.length > 0)
        put(cwd, { "v/visit.yaml": "format: 1\nvisit: v\ndate: 2026-03-14\n", "v/done.yaml": complete });
      const { code, out, err } = carcase(args, { cwd, env: wide });
      expect([code, out, err.trimEnd().split("\n").length]).toEqual([2, "", 1]);
      expect(err).toContain(says);
    },
    ([args, open]) => `${args.join(" ")} with ${open.length} to fill in`,
  );
});
