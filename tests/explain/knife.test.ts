/** The order of the knife: no organ is forgotten or looked at twice, and nothing is told that the rest of the program contradicts. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { kindCalled, topics } from "../../src/explain/index.ts";
import { organs, sampleRules, sampleSets } from "../../src/knowledge/index.ts";
import { knifeSources, necropsySteps, organsByKnife } from "../../src/knowledge/knife.ts";
import { lintCases } from "../../src/lint/index.ts";
import schema from "../../src/schemas/case.schema.json" with { type: "json" };
import { every } from "../every.ts";

const ids = necropsySteps.map(({ id }) => id);

describe("the order of the knife", () => {
  it("has every organ in one step, and no other", () => {
    const sorted = (list: readonly { readonly id: string }[]): string[] => list.map(({ id }) => id).sort();
    expect(sorted(organsByKnife)).toEqual(sorted(organs));
  });

  it("is listed by the word for it and by what it is a list of", () => {
    for (const word of ["knife", "step", "steps"]) expect(kindCalled(word)).toBe("step");
    expect(topics.filter(({ kind }) => kind === "step").map(({ name }) => name)).toEqual(ids);
  });

  it("keeps to the order of which the rules of time speak", () => {
    expect(ids[0]).toBe("before-knife");
    const written = necropsySteps.flatMap(({ write = [] }) => write);
    expect([...written].sort()).toEqual(Object.keys(schema.$defs.steps.properties).sort());
    expect(written).toEqual([
      "blood",
      "csf",
      "sterile_samples",
      "gut_fixed",
      "head_off",
      "meningeal_swab",
      "brain_out",
      "gut_opened",
    ]);
    // The gut goes out closed before the organs behind it, and is opened when all else is done.
    const gut = [
      "gut-pieces",
      "spleen-and-gut-lifted",
      "adrenals-and-kidneys",
      "snout-sawn",
      "joints-and-bones",
    ];
    const last = ["stomach-opened", "gut-opened", "afterwards"];
    expect(ids.filter((id) => gut.includes(id))).toEqual(gut);
    expect(ids.slice(-3)).toEqual(last);
  });

  every("names sources that are written down", necropsySteps, ({ cut, landmark, mistake, ages = [] }) => {
    for (const line of [...cut, ...landmark, ...mistake, ...ages])
      if (typeof line !== "string" && line.by !== undefined)
        expect(knifeSources.has(line.by), line.by).toBe(true);
  });

  it("writes down no source that nobody names", () => {
    const named = JSON.stringify(necropsySteps);
    expect([...knifeSources.keys()].filter((name) => !named.includes(`"by":"${name}"`))).toEqual([]);
  });

  it("sends to sections of docs/safety.md that are there", () => {
    const headings = [...readFileSync("docs/safety.md", "utf8").matchAll(/^## (.*)$/gm)].map(
      ([, heading = ""]) =>
        heading
          .toLowerCase()
          .replaceAll(/[^a-z -]/g, "")
          .replaceAll(" ", "-"),
    );
    const cautions = necropsySteps.flatMap(({ caution = [] }) => caution.map(({ safety }) => safety));
    expect(cautions.filter((safety) => !headings.includes(safety))).toEqual([]);
  });

  const samples = [...sampleSets.values()].flatMap(({ id, samples: taken }) =>
    taken.map(({ from, into, for: tests }) => ({
      id: `${id}: ${from} into ${into}`,
      from,
      one: into,
      tests,
    })),
  );
  every("takes no sample that the linter would refuse", samples, ({ from, one, tests }) => {
    const text = `format: 1\ncase: a\nsamples:\n  - {id: a-1, from: ${from}, into: ${one}, for: [${tests.join(", ")}]}\n`;
    const bytes = new TextEncoder().encode(text);
    const { findings } = lintCases(readCases(["-"], { input: { bytes, name: "a.yaml" } }));
    const refused = [
      "case-format",
      "test-impossible",
      "sample-organ-unknown",
      ...Object.keys(sampleRules.unfit),
    ];
    expect(findings.filter(({ rule }) => refused.includes(rule)).map(({ message }) => message)).toEqual([]);
  });
});
