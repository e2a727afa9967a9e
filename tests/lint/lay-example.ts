/** Lays an example of a rule over the complete base visit, in a folder of its own, and lints it. */
import { readFileSync } from "node:fs";
import { posix } from "node:path";
import { parse, stringify } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { checkHouseScales } from "../../src/herd/index.ts";
import { type Example, type LintOptions, type LintResult, lintCases } from "../../src/lint/index.ts";
import { folderInTurns } from "../cases/temporary.ts";

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

/** The YAML of a map, key by key: what no example lays over was written before. */
function written(map: Record<string, unknown>): string {
  const entry = ([key, value]: [string, unknown]): string => {
    const isKept = typeof value === "object" && value !== null;
    const before = isKept ? known.get(value)?.get(key) : undefined;
    const text = before ?? stringify({ [key]: value });
    if (isKept) known.set(value, (known.get(value) ?? new Map()).set(key, text));
    return text;
  };
  return Object.entries(map).map(entry).join("");
}
const known = new WeakMap<object, Map<string, string>>();

const farm = baseFile("farm.yaml");
const visit = baseFile("2026-04-20/visit.yaml");
const pig = baseFile("2026-04-20/pig-01.yaml");
const furtherPigs = new Map<number, Record<string, unknown>>();
const inTurns = folderInTurns();

/** The base pig as a further pig of the visit: its samples have numbers of their own. */
function furtherPig(number: number): Record<string, unknown> {
  const samples = pig.samples as readonly { readonly id: string }[];
  const further = furtherPigs.get(number) ?? {
    ...pig,
    samples: samples.map((sample) => ({ ...sample, id: `0${number}${sample.id.slice(2)}` })),
  };
  furtherPigs.set(number, further);
  return further;
}

/** The base visit has no results; those of an example are laid over these. */
const noResults = {
  format: 1,
  results: "birch-2026-04-20",
  laboratory: { name: "Willow Lane Veterinary Laboratory", reported: "2026-04-27" },
  entries: [],
};

const schemaOf = ({ schema }: Example): string =>
  schema === undefined ? "" : `# yaml-language-server: $schema=${schema}\n`;

/** Lints the base visit with an example over it. */
export function lintExample(example: Example, options: LintOptions = {}): LintResult {
  const over = (base: Record<string, unknown>, text = "{}"): string => {
    const laid = lay(base, parse(text));
    return typeof laid === "object" && laid !== null && !Array.isArray(laid)
      ? written(laid as Record<string, unknown>)
      : stringify(laid);
  };
  const named = example.scale === undefined ? {} : { scales: ["shipped", "scales/house.yaml"] };
  const files: Record<string, string> = {
    "carcase.yaml": over({ format: 1, ...named }, example.settings),
    "farm.yaml": written(farm),
    "2026-04-20/visit.yaml": over(visit, example.visit),
    "2026-04-20/pig-01.yaml": schemaOf(example) + over(pig, example.case),
  };
  if (example.results !== undefined) files["2026-04-20/results.yaml"] = over(noResults, example.results);
  if (example.scale !== undefined) files["scales/house.yaml"] = example.scale;
  for (const name of example.files ?? []) files[posix.join("2026-04-20", name)] = "";
  for (const [index, other] of (example.others ?? []).entries())
    files[`2026-04-20/pig-0${index + 2}.yaml`] = over(furtherPig(index + 2), other);
  return lintCases(checkHouseScales(readCases([inTurns(files)])), {
    ...(example.today !== undefined && { today: example.today }),
    ...options,
  });
}
