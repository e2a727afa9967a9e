/** Lays an example of a rule over the complete base visit, in a folder of its own, and lints it. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { parse, stringify } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { checkHouseScales } from "../../src/herd/index.ts";
import { type Example, type LintOptions, type LintResult, lintCases } from "../../src/lint/index.ts";

const base = new URL("../fixtures/birch-farm/", import.meta.url);
const baseFile = (name: string): Record<string, unknown> => parse(readFileSync(new URL(name, base), "utf8"));

/** Values of `over` go before those of `under`; a blank key stays blank. */
export function lay(under: unknown, over: unknown): unknown {
  const isMap = (value: unknown): value is Record<string, unknown> =>
    typeof value === "object" && value !== null && !Array.isArray(value);
  if (!isMap(under) || !isMap(over)) return over;
  const merged: Record<string, unknown> = { ...under };
  for (const [key, value] of Object.entries(over))
    merged[key] = key in under ? lay(under[key], value) : value;
  return merged;
}

/** The base pig as a further pig of the visit: its samples have numbers of their own. */
function renumbered(one: Record<string, unknown>, number: number): Record<string, unknown> {
  const samples = one.samples as readonly { readonly id: string }[];
  return { ...one, samples: samples.map((sample) => ({ ...sample, id: `0${number}${sample.id.slice(2)}` })) };
}

/** Lints the base visit with an example over it. */
export function lintExample(example: Example, options: LintOptions = {}): LintResult {
  const folder = mkdtempSync(join(tmpdir(), "carcase-example-"));
  try {
    const day = join(folder, "2026-04-20");
    mkdirSync(day);
    const one = baseFile("2026-04-20/pig-01.yaml");
    const write = (name: string, value: unknown): void => writeFileSync(join(folder, name), stringify(value));
    const named = example.scale === undefined ? {} : { scales: ["shipped", "scales/house.yaml"] };
    write("carcase.yaml", lay({ format: 1, ...named }, parse(example.settings ?? "{}")));
    if (example.scale !== undefined) {
      mkdirSync(join(folder, "scales"));
      writeFileSync(join(folder, "scales/house.yaml"), example.scale);
    }
    write("farm.yaml", baseFile("farm.yaml"));
    write("2026-04-20/visit.yaml", lay(baseFile("2026-04-20/visit.yaml"), parse(example.visit ?? "{}")));
    for (const name of example.files ?? []) {
      mkdirSync(dirname(join(day, name)), { recursive: true });
      writeFileSync(join(day, name), "");
    }
    write("2026-04-20/pig-01.yaml", lay(one, parse(example.case ?? "{}")));
    for (const [index, other] of (example.others ?? []).entries())
      write(`2026-04-20/pig-0${index + 2}.yaml`, lay(renumbered(one, index + 2), parse(other)));
    return lintCases(checkHouseScales(readCases([folder])), options);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
